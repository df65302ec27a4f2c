import { useTranslations } from 'use-intl';
import type { OperatorEntry } from '@/lib/domain/plant/plant-file';
import table from '@/lib/ui/table.module.css';
import { TraceLink } from '@/lib/ui/trace/trace-link';

/** Everyone who works at a station, with the operations that they are qualified for. */
export function OperatorsTable({ operators }: { operators: readonly OperatorEntry[] }) {
  const t = useTranslations('plant.operators');
  return (
    <table className={table.table}>
      <thead>
        <tr>
          <th scope="col">{t('badge')}</th>
          <th scope="col">{t('name')}</th>
          <th scope="col">{t('operations')}</th>
        </tr>
      </thead>
      <tbody>
        {operators.map(({ badge, name, operations = [] }) => (
          <tr key={badge}>
            <th scope="row">
              <TraceLink about="operator" code={badge} />
            </th>
            <td>{name}</td>
            <td data-label={t('operations')}>{operations.join(', ')}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
