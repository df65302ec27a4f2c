'use client';

import { IconCheck, IconScale } from '@tabler/icons-react';
import Link from 'next/link';
import { useTimeZone, useTranslations } from 'use-intl';
import type { CountCheck } from '@/lib/domain/balance/count-check';
import { CountCard } from '@/lib/ui/counts/count-card';
import classes from '@/lib/ui/counts/counts.module.css';
import { formatMoment } from '@/lib/ui/format-moment';
import { Screen } from '@/lib/ui/shell/screen';
import { Trouble } from '@/lib/ui/trouble';

const DAY_MS = 86_400_000;

/** Every reel whose counts disagree with its use, newest first; what agrees is only counted. */
export function CountsPage({ check }: { check: CountCheck }) {
  const t = useTranslations('counts');
  const timeZone = useTimeZone() ?? 'UTC';
  const { isWeighed, since, now, reels, disagreeing } = check;
  const days = Math.round((Date.parse(now) - Date.parse(since)) / DAY_MS);
  const sinceDay = formatMoment(Date.parse(since), { timeZone, precision: 'day' });
  if (!isWeighed)
    return (
      <Screen title={t('title')}>
        <Trouble meaning="quiet" shape={IconScale} title={t('off')}>
          {t('offText')} <Link href="/plant">{t('openPlant')}</Link>
        </Trouble>
      </Screen>
    );
  return (
    <Screen title={t('title')}>
      <p className={classes.intro}>{t('intro')}</p>
      <p>{t('weighed', { reels, days, since: sinceDay, count: disagreeing.length })}</p>
      {disagreeing.length === 0 && (
        <Trouble meaning="quiet" shape={IconCheck} title={t('agree')}>
          {t('agreeText')}
        </Trouble>
      )}
      <ol className={classes.list}>
        {disagreeing.map((count) => (
          <li key={`${count.item} ${count.from.at}`}>
            <CountCard count={count} />
          </li>
        ))}
      </ol>
    </Screen>
  );
}
