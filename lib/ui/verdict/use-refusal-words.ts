import { useTranslations } from 'use-intl';
import { type ItemKind, itemKindSchema } from '@/lib/domain/events/vocabulary';
import type { Refusal } from '@/lib/domain/gate/refusals';
import { refusalFacts } from '@/lib/ui/verdict/refusal-facts';
import { useFaultWords } from '@/lib/ui/verdict/use-fault-words';
import { useHoldReason } from '@/lib/ui/verdict/use-hold-reason';

/** Gives the words of a refusal, from a check, an append or a flag: a title of two or three words and a sentence. */
export function useRefusalWords(): (refusal: Refusal) => { title: string; text: string } {
  const t = useTranslations('refusals');
  const reasonOf = useHoldReason();
  const faultOf = useFaultWords();
  const tKind = useTranslations('tags.itemKind');
  const kindOf = (kind = '') => (isItemKind(kind) ? tKind(kind) : kind);
  return (refusal) => {
    const facts = refusalFacts(refusal, faultOf);
    const words = {
      ...facts,
      ...(refusal.code === 'on_hold' && { reason: reasonOf(facts.reason ?? '') }),
      ...(refusal.code === 'wrong_kind' && { kind: kindOf(facts.kind), expected: kindOf(facts.expected) }),
    };
    return { title: t(`${refusal.code}.title`), text: t(`${refusal.code}.text`, words) };
  };
}

function isItemKind(word: string): word is ItemKind {
  return itemKindSchema.safeParse(word).success;
}
