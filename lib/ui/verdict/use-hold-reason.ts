import { useTranslations } from 'use-intl';
import { holdReasonWords } from '@/lib/ui/verdict/hold-reason-words';

/** Says why something is on hold: the words of who placed it, or those of what the gate found. */
export function useHoldReason(): (reason: string) => string {
  const t = useTranslations();
  return (reason) =>
    holdReasonWords(reason, (code) =>
      code === 'attempts_exhausted' ? t('holds.reasonOf.attempts_exhausted') : t(`refusals.${code}.title`),
    );
}
