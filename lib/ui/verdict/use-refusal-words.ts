import { useTranslations } from 'use-intl';
import type { Refusal } from '@/lib/domain/gate/refusals';
import { refusalFacts } from '@/lib/ui/verdict/refusal-facts';

/** Gives the words of a refusal, from a check, an append or a flag: a title of two or three words and a sentence. */
export function useRefusalWords(): (refusal: Refusal) => { title: string; text: string } {
  const t = useTranslations('refusals');
  return (refusal) => ({
    title: t(`${refusal.code}.title`),
    text: t(`${refusal.code}.text`, refusalFacts(refusal)),
  });
}
