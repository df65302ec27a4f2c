import { useTranslations } from 'use-intl';
import type { LineOrder } from '@/lib/domain/floor/order-stations';
import type { StationEntry } from '@/lib/domain/plant/plant-file';
import classes from '@/lib/ui/plant/plant.module.css';
import table from '@/lib/ui/table.module.css';
import { TraceLink } from '@/lib/ui/trace/trace-link';

/** The stations of each line in the order in which units come to them, with their slots. */
export function LinesTable({ lines }: { lines: readonly LineOrder[] }) {
  const t = useTranslations('plant.lines');
  return (
    <table className={table.table}>
      <thead>
        <tr>
          <th scope="col">{t('station')}</th>
          <th scope="col">{t('operation')}</th>
          <th scope="col">{t('slots')}</th>
        </tr>
      </thead>
      {lines.map(({ line, stations }) => (
        <tbody key={JSON.stringify(line)}>
          <tr className={classes.group}>
            <th scope="rowgroup" colSpan={3}>
              {line === null ? t('noLine') : t('line', { line })}
            </th>
          </tr>
          {stations.map((station) => (
            <StationRow key={station.code} station={station} />
          ))}
        </tbody>
      ))}
    </table>
  );
}

function StationRow({ station: { code, operation, slots = [], scannedBy = [] } }: { station: StationEntry }) {
  const t = useTranslations('plant.lines');
  const tKind = useTranslations('tags.itemKind');
  return (
    <tr>
      <th scope="row">
        <TraceLink about="station" code={code} />
      </th>
      <td data-label={t('operation')}>
        {operation}
        {scannedBy.length > 0 && <div>{t('scannedBy', { devices: scannedBy.join(', ') })}</div>}
      </td>
      <td>
        {slots.length === 0 ? (
          t('noSlots')
        ) : (
          <details>
            <summary>{t('slotCount', { count: slots.length })}</summary>
            <ul className={classes.slots}>
              {slots.map(({ name, holds }) => (
                <li key={name}>
                  <b>{name}</b> {tKind(holds)}
                </li>
              ))}
            </ul>
          </details>
        )}
      </td>
    </tr>
  );
}
