'use client';

import { Group } from '@mantine/core';
import Link from 'next/link';
import { useFormatter, useTranslations } from 'use-intl';
import type { TraceSubject } from '@/lib/domain/genealogy/trace-subject';
import { CodeText } from '@/lib/ui/code-text';
import { Facts } from '@/lib/ui/facts';
import { timelineAddress } from '@/lib/ui/slot-timeline/timeline-address';
import { HoldTag } from '@/lib/ui/tags/hold-tag';

/** What is known of the thing that a where-used answer is about. */
export function SubjectFacts({ subject }: { subject: TraceSubject }) {
  const t = useTranslations('trace.facts');
  const tKind = useTranslations('tags.itemKind');
  const { number } = useFormatter();
  switch (subject.about) {
    case 'item': {
      const { item, isHeld } = subject;
      const state = isHeld ? <HoldTag isOpen /> : item === null ? t('never') : item.isRetired && t('retired');
      return (
        <Facts
          facts={[
            [t('kind'), item && tKind(item.kind)],
            [t('part'), item?.part != null && <CodeText code={item.part} />],
            [t('description'), item?.description],
            [t('lot'), item?.lot != null && <CodeText code={item.lot} kind="lot" />],
            [t('supplier'), item?.supplier],
            [t('quantity'), item?.quantity != null && number(item.quantity)],
            [t('state'), state],
          ]}
        />
      );
    }
    case 'lot':
      return (
        <Facts
          facts={[
            [t('items'), number(subject.itemCount)],
            [t('part'), subject.parts.join(', ')],
            [t('state'), subject.isHeld && <HoldTag isOpen />],
          ]}
        />
      );
    case 'part':
      return (
        <Facts
          facts={[
            [t('description'), subject.description],
            [t('items'), number(subject.itemCount)],
            [
              t('newest'),
              subject.items.length > 0 && (
                <Group gap="xs">
                  {subject.items.map((item) => (
                    <CodeText key={item} code={item} kind="item" />
                  ))}
                </Group>
              ),
            ],
          ]}
        />
      );
    case 'station':
      return (
        <Facts
          facts={[
            [t('operation'), subject.operation],
            [t('line'), subject.line],
            [
              t('slots'),
              <Link key="slots" href={timelineAddress(subject.code)} prefetch={false}>
                {t('slotsOverTime')}
              </Link>,
            ],
          ]}
        />
      );
    case 'operator':
      return <Facts facts={[[t('name'), subject.name]]} />;
    case 'time':
      return null;
    default:
      return subject satisfies never;
  }
}
