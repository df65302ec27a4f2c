'use client';

import { IconCloudOff } from '@tabler/icons-react';
import { useTimeZone, useTranslations } from 'use-intl';
import type { Provisional } from '@/lib/domain/gate/question';
import { formatClock } from '@/lib/ui/format-moment';
import classes from '@/lib/ui/shop/shop.module.css';

/** Says that a verdict is the tablet's own: how old its knowledge is, and which rules it could not decide. */
export function ProvisionalStrip({
  provisional: { asOfMs, undecided },
  isStopped = false,
}: {
  provisional: Provisional;
  isStopped?: boolean;
}) {
  const t = useTranslations();
  const timeZone = useTimeZone() ?? 'UTC';
  const rules = [...new Set(undecided.map(({ code }) => t(`refusals.${code}.title`)))].join(', ');
  return (
    <div className={classes.strip} data-meaning="caution" role="status">
      <IconCloudOff aria-hidden />
      <span className={classes.grow}>
        {t('station.provisional.title', { clock: formatClock(asOfMs, timeZone) })}
        {rules !== '' && (
          <>
            <br />
            {isStopped ? t('station.provisional.stopped') : t('station.provisional.undecided', { rules })}
          </>
        )}
      </span>
    </div>
  );
}
