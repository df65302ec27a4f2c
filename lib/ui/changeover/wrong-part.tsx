'use client';

import { useTranslations } from 'use-intl';
import { z } from 'zod';
import type { Refusal } from '@/lib/domain/gate/refusals';
import classes from '@/lib/ui/changeover/changeover.module.css';

const wrongPartSchema = z.object({
  slot: z.string(),
  part: z.string().nullable(),
  expected: z.array(z.string()),
});

/** What the slot wants and what was scanned, side by side in the largest letters that fit. */
export function WrongPart({ reasons }: { reasons: readonly Refusal[] }) {
  const t = useTranslations('changeover');
  const parsed = wrongPartSchema.safeParse(reasons.find((reason) => reason.code === 'wrong_part'));
  if (!parsed.success) return null;
  const { slot, part, expected } = parsed.data;
  return (
    <>
      <p className={classes.wrong}>{t('wrongPart')}</p>
      <dl className={classes.against}>
        <div>
          <dt>{t('expected', { slot })}</dt>
          <dd>{expected.join(', ')}</dd>
        </div>
        <div>
          <dt>{t('scanned')}</dt>
          <dd>{part ?? t('noPart')}</dd>
        </div>
      </dl>
    </>
  );
}
