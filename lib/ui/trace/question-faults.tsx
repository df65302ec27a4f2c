'use client';

import { Alert } from '@mantine/core';
import { useTranslations } from 'use-intl';
import type { InputError } from '@/lib/domain/input-errors';

/** What is wrong with a question that was typed into the address. */
export function QuestionFaults({ faults }: { faults: readonly InputError[] }) {
  const t = useTranslations('trace');
  return (
    <Alert role="alert" color="red" variant="outline" title={t('faults')}>
      <ul>
        {faults.map(({ pointer, detail }) => (
          <li key={pointer + detail}>{`${pointer.slice(1)} ${detail}`.trim()}</li>
        ))}
      </ul>
    </Alert>
  );
}
