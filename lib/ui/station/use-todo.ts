import { useTranslations } from 'use-intl';
import type { Refusal, RefusalCode } from '@/lib/domain/gate/refusals';
import { station } from '@/lib/ui/messages/en/station';
import { refusalFacts } from '@/lib/ui/verdict/refusal-facts';

type KnownTodo = Exclude<keyof typeof station.todo, 'other'>;

/** Says what to do about a no-go: the way out of its first reason that has one. */
export function useTodo(): (reasons: readonly Refusal[]) => string {
  const t = useTranslations('station.todo');
  return (reasons) => {
    for (const reason of reasons) {
      const { code } = reason;
      if (!isKnown(code)) continue;
      const { operation = '', expected = '' } = refusalFacts(reason);
      return t(code, { operation, expected });
    }
    return t('other');
  };
}

function isKnown(code: RefusalCode): code is KnownTodo & RefusalCode {
  return code in station.todo;
}
