'use client';

import { useTranslations } from 'use-intl';
import { UnknownCode } from '@/lib/ui/unknown-code';

/** What stands where a unit's page would, when no event names the unit. */
export function UnknownUnit({ unit, isPast }: { unit: string; isPast: boolean }) {
  const t = useTranslations('unit.unknown');
  return (
    <UnknownCode
      code={unit}
      title={t('title', { unit })}
      text={t(isPast ? 'textAt' : 'text')}
      trace={t('trace', { unit })}
    />
  );
}
