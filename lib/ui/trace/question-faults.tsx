'use client';

import { Alert } from '@mantine/core';
import { useTranslations } from 'use-intl';
import type { InputError } from '@/lib/domain/input-errors';
import { useFaultWords } from '@/lib/ui/verdict/use-fault-words';

/** What is wrong with a question that was typed into the address. */
export function QuestionFaults({ faults }: { faults: readonly InputError[] }) {
  const t = useTranslations('trace');
  const wordsOf = useFaultWords();
  return (
    <Alert role="alert" color="red" variant="outline" title={t('faults')}>
      <ul>
        {faults.map(({ pointer, code }) => (
          <li key={`${pointer} ${code}`}>
            {pointer !== '' && `${pointer.slice(1)}: `}
            {wordsOf(code)}
          </li>
        ))}
      </ul>
    </Alert>
  );
}
