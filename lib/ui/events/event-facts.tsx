'use client';

import type { ReactNode } from 'react';
import { useFormatter, useTranslations } from 'use-intl';
import type { EventOf, WireEvent } from '@/lib/domain/events/catalogue';
import { CodeText } from '@/lib/ui/code-text';
import { Readings } from '@/lib/ui/events/readings';
import classes from '@/lib/ui/events/timeline.module.css';
import { isCountMethod } from '@/lib/ui/shop/count-method';
import { ResultTag } from '@/lib/ui/tags/result-tag';
import { useDuration } from '@/lib/ui/use-duration';

/** A fact of an event: its name, or null where the value speaks for itself, and the value. */
export type EventFact = readonly [name: string | null, value: ReactNode];

/** Everything that an event says beyond its type, time, station and operator, in one line that wraps. */
export function EventFacts({ event }: { event: WireEvent }) {
  const factsOf = useEventFacts();
  return (
    <span className={classes.facts}>
      {factsOf(event).map(([name, value], index) =>
        value === undefined || value === null || value === false || value === '' ? null : (
          // biome-ignore lint/suspicious/noArrayIndexKey: the facts of an event never change
          <span key={index}>
            {name !== null && <b>{name}</b>} {value}{' '}
          </span>
        ),
      )}
    </span>
  );
}

function useEventFacts(): (event: WireEvent) => EventFact[] {
  const t = useTranslations('eventFacts');
  const tTags = useTranslations('tags');
  const tMethod = useTranslations('items.method');
  const { number } = useFormatter();
  const processed = useProcessedFacts();
  const unit = (code: string) => <CodeText code={code} kind="unit" />;
  const item = (code: string) => <CodeText code={code} kind="item" />;
  const container = (code: string) => <CodeText code={code} kind="container" />;
  const methodOf = (method: string) => (isCountMethod(method) ? tMethod(method) : method);
  const quantity = (value: number | undefined) => value !== undefined && number(value);
  return (event) => {
    switch (event.type) {
      case 'unit.started': {
        const { product, revision, order, boardLot, panel, panelPosition } = event.body;
        return [
          [t('product'), `${product} ${revision}`],
          [t('order'), order],
          [t('boardLot'), boardLot !== undefined && item(boardLot)],
          [t('panel'), panel],
          [t('panelPosition'), panelPosition],
        ];
      }
      case 'unit.processed':
        return processed(event);
      case 'unit.signed':
        return [[t('meaning'), event.body.meaning]];
      case 'unit.joined':
        return [
          [t('unit'), unit(event.body.unit)],
          [t('into'), unit(event.body.into)],
          [t('position'), event.body.position],
        ];
      case 'unit.separated':
        return [
          [t('unit'), unit(event.body.unit)],
          [t('from'), unit(event.body.from)],
        ];
      case 'part.removed':
        return [
          [t('position'), event.body.position],
          [t('reason'), event.body.reason],
        ];
      case 'part.installed': {
        const { position, item: code, fromUnit, fromPosition } = event.body;
        return [
          [t('position'), position],
          [t('item'), code !== undefined && item(code)],
          [t('salvaged'), fromUnit !== undefined && unit(fromUnit)],
          [null, fromPosition !== undefined && t('salvagedAt', { position: fromPosition })],
        ];
      }
      case 'unit.scrapped':
        return [[t('reason'), event.body.reason]];
      case 'unit.packed':
      case 'unit.unpacked':
        return [
          [t('unit'), unit(event.body.unit)],
          [t('container'), container(event.body.container)],
        ];
      case 'container.nested':
        return [
          [t('container'), container(event.body.container)],
          [t('into'), container(event.body.into)],
        ];
      case 'container.unnested':
        return [
          [t('container'), container(event.body.container)],
          [t('from'), container(event.body.from)],
        ];
      case 'container.shipped':
        return [
          [t('container'), container(event.body.container)],
          [t('shipment'), <CodeText key="shipment" code={event.body.shipment} kind="shipment" />],
          [t('customer'), event.body.customer],
          [t('destination'), event.body.destination],
        ];
      case 'unit.returned':
        return [
          [t('customer'), event.body.customer],
          [t('reference'), event.body.reference],
          [t('symptom'), event.body.symptom],
        ];
      case 'hold.placed': {
        const { kind, id } = event.body.target;
        return [
          [t('target'), tTags(`holdTarget.${kind}`)],
          [null, <CodeText key="target" code={id} kind={kind} />],
          [t('reason'), event.body.reason],
        ];
      }
      case 'hold.released':
        return [
          [t('disposition'), event.body.disposition],
          [t('reason'), event.body.reason],
        ];
      case 'exception.cleared':
        return [
          [t('clears'), <CodeText key="event" code={event.body.event} />],
          [t('reason'), event.body.reason],
        ];
      case 'item.received': {
        const { item: code, kind, part, lot, supplier } = event.body;
        return [
          [t('item'), item(code)],
          [t('kind'), tTags(`itemKind.${kind}`)],
          [t('part'), part],
          [t('lot'), lot !== undefined && <CodeText code={lot} kind="lot" />],
          [t('supplier'), supplier],
          [t('quantity'), quantity(event.body.quantity)],
        ];
      }
      case 'item.counted':
        return [
          [t('quantity'), number(event.body.quantity)],
          [t('method'), methodOf(event.body.method)],
        ];
      case 'item.mounted':
        return [
          [t('item'), item(event.body.item)],
          [t('slot'), event.body.slot],
        ];
      case 'item.unmounted':
        return [
          [t('item'), item(event.body.item)],
          [t('slot'), event.body.slot],
          [t('left'), quantity(event.body.left)],
        ];
      case 'item.spliced':
        return [
          [t('spliceFrom'), item(event.body.from)],
          [t('spliceTo'), item(event.body.to)],
          [t('slot'), event.body.slot],
          [t('greyUnits'), quantity(event.body.greyUnits)],
        ];
      case 'item.inspected':
        return [
          [null, <ResultTag key="result" result={event.body.result} />],
          [t('readings'), event.body.readings && <Readings readings={event.body.readings} />],
        ];
      case 'item.retired':
        return [
          [t('reason'), event.body.reason],
          [t('left'), quantity(event.body.left)],
        ];
      case 'device.retired':
        return [
          [t('device'), event.body.device],
          [t('reason'), event.body.reason],
        ];
      case 'label.printed': {
        const { target, copies, reason } = event.body;
        return [
          [null, tTags(`labelKind.${target.kind}`)],
          [
            null,
            <CodeText
              key="target"
              code={target.id}
              {...(target.kind !== 'badge' && { kind: target.kind })}
            />,
          ],
          [t('copies'), number(copies)],
          [t('reprint'), reason],
        ];
      }
      case 'event.voided':
        return [
          [t('voids'), <CodeText key="event" code={event.body.event} />],
          [t('reason'), event.body.reason],
        ];
      default:
        return event satisfies never;
    }
  };
}

function useProcessedFacts(): (event: EventOf<'unit.processed'>) => EventFact[] {
  const t = useTranslations('eventFacts');
  const duration = useDuration();
  return ({ at, body: { result, startedAt, defects = [], readings = [], used = [] } }) => [
    [null, <ResultTag key="result" result={result} />],
    [t('took'), startedAt !== undefined && duration(Date.parse(at) - Date.parse(startedAt))],
    [
      t('defects'),
      defects.length > 0 &&
        defects
          .map(({ code, position, note }) =>
            [position === undefined ? code : t('defectAt', { code, position }), note]
              .filter(Boolean)
              .join(': '),
          )
          .join('; '),
    ],
    [t('readings'), readings.length > 0 && <Readings readings={readings} />],
    ...used.map(
      ({ item, positions = [] }): EventFact => [
        t('used'),
        <span key={item}>
          <CodeText code={item} kind="item" />{' '}
          {positions.length > 0 && t('usedAt', { positions: positions.join(', ') })}
        </span>,
      ],
    ),
  ];
}
