import { useTranslations } from 'use-intl';
import type { PackedUnit } from '@/lib/domain/packing/packing-record';
import { CodeText } from '@/lib/ui/code-text';
import table from '@/lib/ui/table.module.css';
import { HoldTag } from '@/lib/ui/tags/hold-tag';

/** Units in a container or shipment; says how many there are when not all are listed. */
export function PackedUnits({ units, count }: { units: readonly PackedUnit[]; count: number }) {
  const t = useTranslations('packing.units');
  if (units.length === 0) return <p>{t('none')}</p>;
  const columns = ['unit', 'product', 'container', 'state'] as const;
  return (
    <>
      {count > units.length && <p>{t('first', { shown: units.length, count })}</p>}
      <table className={table.table}>
        <thead>
          <tr>
            {columns.map((column) => (
              <th key={column} scope="col">
                {t(column)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {units.map(({ unit, product, revision, container, isHeld }) => (
            <tr key={unit}>
              <th scope="row">
                <CodeText code={unit} kind="unit" />
              </th>
              <td>{product !== null && `${product} ${revision ?? ''}`}</td>
              <td data-label={t('container')}>
                <CodeText code={container} kind="container" />
              </td>
              <td>{isHeld && <HoldTag isOpen />}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
}
