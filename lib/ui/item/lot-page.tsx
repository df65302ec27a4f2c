'use client';

import { useFormatter, useTranslations } from 'use-intl';
import type { LotRecord } from '@/lib/domain/items/item-record';
import { CodeText } from '@/lib/ui/code-text';
import type { DeskActions } from '@/lib/ui/desk/desk-actions';
import { HoldsTable } from '@/lib/ui/desk/holds-table';
import { PlaceHoldButton } from '@/lib/ui/desk/place-hold-button';
import { Facts } from '@/lib/ui/facts';
import { ItemTroubles } from '@/lib/ui/item/item-troubles';
import { Section } from '@/lib/ui/section';
import table from '@/lib/ui/table.module.css';
import { ResultTag } from '@/lib/ui/tags/result-tag';
import { RecordScreen } from '@/lib/ui/trace/record-screen';
import { TraceLink } from '@/lib/ui/trace/trace-link';
import { UsedSummary } from '@/lib/ui/trace/used-summary';

/** A supplier's lot: the items that were received with it, and who used them. */
export function LotPage({ record, actions }: { record: LotRecord; actions: DeskActions }) {
  const t = useTranslations('item');
  const tUnit = useTranslations('unit');
  const { lot, items, holds, used } = record;
  return (
    <RecordScreen
      title={t.rich('lotTitleRich', { code: () => <CodeText code={lot} /> })}
      beside={<PlaceHoldButton kind="lot" id={lot} action={actions.placeHold} />}
    >
      <ItemTroubles holds={holds} />
      <Facts
        facts={[
          [
            t('facts.part'),
            distinct(items.map(({ part }) => part)).map((part) => (
              <div key={part}>
                <TraceLink about="part" code={part} />
              </div>
            )),
          ],
          [t('facts.supplier'), distinct(items.map(({ supplier }) => supplier)).join(', ')],
        ]}
      />
      <UsedSummary question={{ lot }} answer={used} />
      {holds.length > 0 && (
        <Section title={tUnit('holds.title')}>
          <HoldsTable holds={holds} release={actions.releaseHold} />
        </Section>
      )}
      <Section title={t('items.title')} beside={<p>{t('items.count', { count: items.length })}</p>}>
        <LotItems items={items} />
      </Section>
    </RecordScreen>
  );
}

function distinct(words: readonly (string | null)[]): string[] {
  return [...new Set(words.flatMap((word) => word ?? []))];
}

function LotItems({ items }: { items: LotRecord['items'] }) {
  const t = useTranslations('item');
  const tKind = useTranslations('tags.itemKind');
  const { number } = useFormatter();
  const columns = ['item', 'kind', 'part', 'quantity', 'state'] as const;
  return (
    <table className={table.table}>
      <thead>
        <tr>
          {columns.map((column) => (
            <th key={column} scope="col">
              {t(`items.${column}`)}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {items.map(({ item, kind, part, quantity, isRetired, inspected }) => (
          <tr key={item}>
            <th scope="row">
              <CodeText code={item} kind="item" />
            </th>
            <td>{tKind(kind)}</td>
            <td data-label={t('items.part')}>{part !== null && <TraceLink about="part" code={part} />}</td>
            <td data-label={t('items.quantity')}>{quantity !== null && number(quantity)}</td>
            <td>
              {isRetired && t('retired')} {inspected !== null && <ResultTag result={inspected} />}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
