'use client';

import { IconCloudOff } from '@tabler/icons-react';
import { useTimeZone, useTranslations } from 'use-intl';
import type { About } from '@/lib/domain/station/session/session';
import { formatClock } from '@/lib/ui/format-moment';
import classes from '@/lib/ui/shop/shop.module.css';

/** Says that a verdict is the tablet's own: how old its knowledge is, and which rules it could not decide. */
export function ProvisionalStrip({
  about: { provisional },
  isStopped = false,
}: {
  about: About;
  isStopped?: boolean;
}) {
  const t = useTranslations();
  const timeZone = useTimeZone() ?? 'UTC';
  if (provisional === undefined) return null;
  const { asOfMs, undecided } = provisional;
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
