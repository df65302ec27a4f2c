'use client';

import { Group } from '@mantine/core';
import { useFormatter, useTimeZone, useTranslations } from 'use-intl';
import type { ItemRecord } from '@/lib/domain/items/item-record';
import { CodeText } from '@/lib/ui/code-text';
import type { DeskActions } from '@/lib/ui/desk/desk-actions';
import { HoldsTable } from '@/lib/ui/desk/holds-table';
import { PlaceHoldButton } from '@/lib/ui/desk/place-hold-button';
import { Timeline } from '@/lib/ui/events/timeline';
import { VoidButton } from '@/lib/ui/events/void-button';
import { Facts } from '@/lib/ui/facts';
import { formatMoment } from '@/lib/ui/format-moment';
import { ItemTroubles } from '@/lib/ui/item/item-troubles';
import { StaysTable } from '@/lib/ui/item/stays-table';
import { LabelsLink } from '@/lib/ui/labels/labels-link';
import { Section } from '@/lib/ui/section';
import { ResultTag } from '@/lib/ui/tags/result-tag';
import { RecordScreen } from '@/lib/ui/trace/record-screen';
import { TraceLink } from '@/lib/ui/trace/trace-link';
import { UsedSummary } from '@/lib/ui/trace/used-summary';

/** A reel, lot, stencil or other item: what it is, where it stood, what speaks against it, and who used it. */
export function ItemPage({ record, actions }: { record: ItemRecord; actions: DeskActions }) {
  const t = useTranslations('item');
  const tKind = useTranslations('tags.itemKind');
  const tUnit = useTranslations('unit');
  const { item, facts, holds, stays, history, used, now } = record;
  const kind = facts === null ? 'none' : tKind(facts.kind);
  return (
    <RecordScreen
      title={t.rich('titleRich', { kind, code: () => <CodeText code={item} /> })}
      beside={
        <Group gap="xs">
          <LabelsLink kind="item" code={item} />
          {facts !== null && <PlaceHoldButton kind="item" id={item} action={actions.placeHold} />}
        </Group>
      }
    >
      <ItemTroubles holds={holds} isRetired={facts?.isRetired === true} isReceived={facts !== null} />
      <ItemFactsLine record={record} />
      <UsedSummary question={{ item }} answer={used} />
      <Section title={t('mounts.title')}>
        <StaysTable stays={stays} now={now} />
      </Section>
      {holds.length > 0 && (
        <Section title={tUnit('holds.title')}>
          <HoldsTable holds={holds} release={actions.releaseHold} />
        </Section>
      )}
      <Section title={t('history')}>
        <Timeline
          history={history}
          actionOf={(recorded) => <VoidButton recorded={recorded} action={actions.voidEvent} />}
        />
      </Section>
    </RecordScreen>
  );
}

function ItemFactsLine({ record: { facts, stays } }: { record: ItemRecord }) {
  const t = useTranslations('item.facts');
  const { number } = useFormatter();
  const timeZone = useTimeZone() ?? 'UTC';
  const open = stays.filter((stay) => stay.until === null);
  const { quantity = null, countedAt = null, expected = null } = facts ?? {};
  const quantityText =
    quantity !== null &&
    (countedAt === null
      ? number(quantity)
      : t('counted', {
          quantity,
          time: formatMoment(Date.parse(countedAt), { timeZone, precision: 'minute' }),
        }));
  return (
    <Facts
      facts={[
        [t('part'), facts?.part != null && <TraceLink about="part" code={facts.part} />],
        [t('description'), facts?.description],
        [t('lot'), facts?.lot != null && <CodeText code={facts.lot} kind="lot" />],
        [t('supplier'), facts?.supplier],
        [t('quantity'), quantityText],
        [
          t('expected'),
          expected !== null &&
            (Math.floor(expected.min) === Math.floor(expected.max)
              ? number(Math.floor(expected.max))
              : t('expectedRange', { min: Math.floor(expected.min), max: Math.floor(expected.max) })),
        ],
        [t('inspected'), facts?.inspected != null && <ResultTag result={facts.inspected} />],
        [
          t('where'),
          open.length === 0
            ? t('nowhere')
            : open.map(({ event, station, slot }) => <div key={event}>{`${station}, ${slot}`}</div>),
        ],
      ]}
    />
  );
}
