'use client';

import { Anchor } from '@mantine/core';
import Link from 'next/link';
import { useTranslations } from 'use-intl';
import type { TraceAnswer } from '@/lib/domain/genealogy/trace-answer';
import { Section } from '@/lib/ui/section';
import { Completeness } from '@/lib/ui/trace/completeness';
import { GroupTabs } from '@/lib/ui/trace/group-tabs';
import { Narrowing } from '@/lib/ui/trace/narrowing';
import { ShippedTable } from '@/lib/ui/trace/shipped-table';
import { type TraceQuestion, traceAddress } from '@/lib/ui/trace/trace-address';

/** A where-used answer in numbers, on the page of the thing that it is about; every number leads to its units. */
export function UsedSummary({ question, answer }: { question: TraceQuestion; answer: TraceAnswer }) {
  const t = useTranslations('item.used');
  return (
    <Section
      title={t('title')}
      beside={
        <Anchor component={Link} href={traceAddress(question)} prefetch={false}>
          {t('open')}
        </Anchor>
      }
    >
      <Completeness facts={answer} />
      <GroupTabs question={question} answer={answer} />
      <Narrowing question={question} answer={answer} />
      {answer.shipped.length > 0 && <ShippedTable shipped={answer.shipped} />}
    </Section>
  );
}
