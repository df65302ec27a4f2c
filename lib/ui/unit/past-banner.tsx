import { IconClock } from '@tabler/icons-react';
import Link from 'next/link';
import { useTimeZone, useTranslations } from 'use-intl';
import { codeHref } from '@/lib/ui/code-href';
import { formatMoment } from '@/lib/ui/format-moment';
import { Trouble } from '@/lib/ui/trouble';

/** Says that a page does not show the record as of now, and leads back to it. */
export function PastBanner({ unit, at }: { unit: string; at: string }) {
  const t = useTranslations('unit.moment');
  const timeZone = useTimeZone() ?? 'UTC';
  const time = formatMoment(Date.parse(at), { timeZone, precision: 'second' });
  return (
    <Trouble meaning="quiet" shape={IconClock} title={t('shown', { time })}>
      <Link href={codeHref('unit', unit) ?? '/trace'}>{t('now')}</Link>
    </Trouble>
  );
}
