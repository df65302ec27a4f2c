'use client';

import { IconAlertTriangleFilled } from '@tabler/icons-react';
import type { UnitCaution } from '@/lib/domain/units/unit-caution';
import classes from '@/lib/ui/shop/shop.module.css';
import { useCautionWords } from '@/lib/ui/shop/use-caution-words';

/** What a unit lacks, or has in it on hold: it is not stopped, but whoever lets it go must know. */
export function UnitCautions({ unit, cautions }: { unit: string; cautions: readonly UnitCaution[] }) {
  const wordsOf = useCautionWords(unit);
  if (cautions.length === 0) return null;
  return (
    <div className={classes.strip} data-meaning="caution" role="alert">
      <IconAlertTriangleFilled aria-hidden />
      <strong className={classes.code}>{unit}</strong>
      <div className={classes.grow}>
        {cautions.map(wordsOf).map((words) => (
          <p key={words} className={classes.line}>
            {words}
          </p>
        ))}
      </div>
    </div>
  );
}
