import { useFormatter, useTranslations } from 'use-intl';
import type { PackedContainer, Shipping } from '@/lib/domain/packing/packing-record';
import { CodeText } from '@/lib/ui/code-text';
import { Moment } from '@/lib/ui/moment';
import table from '@/lib/ui/table.module.css';

type Row = PackedContainer & Partial<Omit<Shipping, 'shipment'>>;

/** Containers with the units in them at any depth, and how they were shipped where that is told. */
export function NestedContainers({ containers }: { containers: readonly Row[] }) {
  const t = useTranslations('packing.containers');
  const { number } = useFormatter();
  const isShipment = containers.some((row) => row.at !== undefined);
  return (
    <table className={table.table}>
      <thead>
        <tr>
          <th scope="col">{t('container')}</th>
          <th scope="col">{t('units')}</th>
          {isShipment && (
            <>
              <th scope="col">{t('customer')}</th>
              <th scope="col">{t('destination')}</th>
              <th scope="col">{t('at')}</th>
            </>
          )}
        </tr>
      </thead>
      <tbody>
        {containers.map(({ container, units, customer, destination, at }) => (
          <tr key={container}>
            <th scope="row">
              <CodeText code={container} kind="container" />
            </th>
            <td data-label={t('units')}>{number(units)}</td>
            {isShipment && (
              <>
                <td>{customer}</td>
                <td data-label={t('destination')}>{destination}</td>
                <td data-label={t('at')}>{at !== undefined && <Moment at={at} />}</td>
              </>
            )}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
