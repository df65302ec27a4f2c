'use client';

import { IconAlertTriangleFilled } from '@tabler/icons-react';
import { useTranslations } from 'use-intl';
import type { HeldInside } from '@/lib/domain/station/scan-picture';
import classes from '@/lib/ui/shop/shop.module.css';
import { useHoldReason } from '@/lib/ui/verdict/use-hold-reason';

/** A unit has something in it that is on hold: it is not stopped, but whoever lets it go must know. */
export function HeldCaution({ unit, held }: { unit: string; held: readonly HeldInside[] }) {
  const t = useTranslations('plantLabels');
  const reasonOf = useHoldReason();
  if (held.length === 0) return null;
  return (
    <div className={classes.strip} data-meaning="caution" role="alert">
      <IconAlertTriangleFilled aria-hidden />
      <div className={classes.grow}>
        {held.map(({ kind, id, reason }) => (
          <p key={`${kind} ${id}`} className={classes.line}>
            {t('heldInside', { unit, kind, id, reason: reasonOf(reason) })}
          </p>
        ))}
      </div>
    </div>
  );
}
