'use client';

import { useTranslations } from 'use-intl';
import { Section } from '@/lib/ui/section';
import type { TraceQuestion } from '@/lib/ui/trace/trace-address';
import { TraceMoment } from '@/lib/ui/trace/trace-moment';

/** In place of an answer about a moment that would need the record of too many units, and how to ask instead. */
export function TooManyUnits({ question, max }: { question: TraceQuestion; max: number }) {
  const t = useTranslations('trace.tooMany');
  return (
    <Section title={t('title')}>
      <TraceMoment question={question} />
      <p role="alert">{t('text', { max })}</p>
    </Section>
  );
}
