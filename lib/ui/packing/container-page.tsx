'use client';

import { Group } from '@mantine/core';
import { IconHandStop } from '@tabler/icons-react';
import { Fragment } from 'react';
import { useFormatter, useTranslations } from 'use-intl';
import type { ContainerRecord } from '@/lib/domain/packing/packing-record';
import { CodeText } from '@/lib/ui/code-text';
import type { DeskActions } from '@/lib/ui/desk/desk-actions';
import { HoldsTable } from '@/lib/ui/desk/holds-table';
import { PlaceHoldButton } from '@/lib/ui/desk/place-hold-button';
import { Timeline } from '@/lib/ui/events/timeline';
import { VoidButton } from '@/lib/ui/events/void-button';
import { Facts } from '@/lib/ui/facts';
import { LabelsLink } from '@/lib/ui/labels/labels-link';
import { Moment } from '@/lib/ui/moment';
import { NestedContainers } from '@/lib/ui/packing/nested-containers';
import { PackedUnits } from '@/lib/ui/packing/packed-units';
import { Section } from '@/lib/ui/section';
import { PlaceTag } from '@/lib/ui/tags/place-tag';
import { RecordScreen } from '@/lib/ui/trace/record-screen';
import { Trouble } from '@/lib/ui/trouble';
import { useHoldReason } from '@/lib/ui/verdict/use-hold-reason';

/** A carton, pallet or other container: what is in it, what it is in, and whether it left. */
export function ContainerPage({ record, actions }: { record: ContainerRecord; actions: DeskActions }) {
  const t = useTranslations('packing');
  const reasonOf = useHoldReason();
  const { container, containers, units, unitCount, holds, history } = record;
  return (
    <RecordScreen
      title={t.rich('containerRich', { code: () => <CodeText code={container} /> })}
      beside={
        <Group gap="xs">
          <LabelsLink kind="container" code={container} />
          <PlaceHoldButton kind="container" id={container} action={actions.placeHold} />
        </Group>
      }
    >
      {holds
        .filter((hold) => hold.releasedAt === null)
        .map(({ hold, reason }) => (
          <Trouble key={hold} meaning="caution" shape={IconHandStop} title={t('held')}>
            {reasonOf(reason)}
          </Trouble>
        ))}
      <ContainerFactsLine record={record} />
      {containers.length > 0 && (
        <Section title={t('containers.title')}>
          <NestedContainers containers={containers} />
        </Section>
      )}
      <Section title={t('units.title')} beside={<p>{t('units.count', { count: unitCount })}</p>}>
        <PackedUnits units={units} count={unitCount} />
      </Section>
      {holds.length > 0 && (
        <Section title={t('holds')}>
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

function ContainerFactsLine({ record }: { record: ContainerRecord }) {
  const t = useTranslations('packing.facts');
  const { number } = useFormatter();
  const { unitCount, around, shipped, shipping } = record;
  return (
    <Facts
      facts={[
        [t('state'), shipped === null ? t('notShipped') : <PlaceTag key="shipped" place="shipped" />],
        [t('units'), number(unitCount)],
        [
          t('around'),
          around.length > 0 &&
            around.map((outer, depth) => (
              <Fragment key={outer}>
                {depth > 0 && ' › '}
                <CodeText code={outer} kind="container" />
              </Fragment>
            )),
        ],
        [t('shipment'), shipped !== null && <CodeText code={shipped.shipment} kind="shipment" />],
        [t('customer'), shipped?.customer],
        [t('destination'), shipping?.destination],
        [t('shippedAt'), shipping !== null && <Moment at={shipping.at} />],
      ]}
    />
  );
}
