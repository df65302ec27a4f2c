import { useTranslations } from 'use-intl';
import type { Refusal, RefusalCode } from '@/lib/domain/gate/refusals';
import { refusalFacts } from '@/lib/ui/verdict/refusal-facts';

/** Reasons that have a way out of their own at a station. */
const KNOWN = [
  'unknown_unit',
  'scrapped',
  'already_packed',
  'already_shipped',
  'on_hold',
  'open_failure',
  'wrong_step',
  'not_on_route',
  'not_qualified',
  'slot_empty',
  'wrong_part',
] as const satisfies readonly RefusalCode[];

/** Says what to do about a no-go: the way out of its first reason that has one. */
export function useTodo(): (reasons: readonly Refusal[]) => string {
  const t = useTranslations('station.todo');
  return (reasons) => {
    for (const reason of reasons) {
      const code = KNOWN.find((known) => known === reason.code);
      if (code === undefined) continue;
      const { operation = '', expected = '' } = refusalFacts(reason);
      return t(code, { operation, expected });
    }
    return t('other');
  };
}
