'use client';

import { useFormatter, useTranslations } from 'use-intl';
import type { ShippedCount } from '@/lib/domain/genealogy/trace-answer';
import { CodeText } from '@/lib/ui/code-text';
import table from '@/lib/ui/table.module.css';

/** Whom to call: the units of the answer that left, by customer and shipment. */
export function ShippedTable({ shipped }: { shipped: readonly ShippedCount[] }) {
  const t = useTranslations('trace.shipped');
  const { number } = useFormatter();
  return (
    <table className={table.table}>
      <thead>
        <tr>
          <th scope="col">{t('customer')}</th>
          <th scope="col">{t('shipment')}</th>
          <th scope="col" className={table.number}>
            {t('certain')}
          </th>
          <th scope="col" className={table.number}>
            {t('possible')}
          </th>
        </tr>
      </thead>
      <tbody>
        {shipped.map(({ customer, shipment, certain, possible }) => (
          <tr key={JSON.stringify([customer, shipment])}>
            <th scope="row">{customer}</th>
            <td data-label={t('shipment')}>
              <CodeText code={shipment} kind="shipment" />
            </td>
            <td data-label={t('certain')} className={table.number}>
              {number(certain)}
            </td>
            <td data-label={t('possible')} className={table.number}>
              {number(possible)}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
