import { useTranslations } from 'use-intl';
import type { UnitDrawRow } from '@/lib/domain/units/unit-record';
import { CodeText } from '@/lib/ui/code-text';
import { Moment } from '@/lib/ui/moment';
import table from '@/lib/ui/table.module.css';
import { CertaintyTag } from '@/lib/ui/tags/certainty-tag';
import { RelationTag } from '@/lib/ui/tags/relation-tag';
import { TraceLink } from '@/lib/ui/trace/trace-link';
import classes from '@/lib/ui/unit/unit.module.css';

const COLUMNS = ['slot', 'item', 'kind', 'part', 'lot', 'positions', 'relation', 'certainty', 'at'] as const;

/** What is left out where there is no room: the slot and the history tell it too. */
const OPTIONAL: ReadonlySet<string> = new Set(['kind', 'at']);

/** Everything that went into a unit or touched it, by station in the order in which the unit came there. */
export function AsBuiltTable({ draws }: { draws: readonly UnitDrawRow[] }) {
  const t = useTranslations('unit.built');
  if (draws.length === 0) return <p>{t('none')}</p>;
  return (
    <table className={table.table}>
      <thead>
        <tr>
          {COLUMNS.map((column) => (
            <th key={column} scope="col" className={OPTIONAL.has(column) ? table.optional : undefined}>
              {t(column)}
            </th>
          ))}
        </tr>
      </thead>
      {byStation(draws).map(({ station, rows }) => (
        <tbody key={JSON.stringify(station)}>
          <tr className={classes.station}>
            <th scope="rowgroup" colSpan={COLUMNS.length}>
              {station === null ? t('noStation') : <CodeText code={station} />}
            </th>
          </tr>
          {rows.map((draw) => (
            <DrawRow key={`${draw.by} ${draw.slot} ${draw.item} ${draw.positions.join()}`} draw={draw} />
          ))}
        </tbody>
      ))}
    </table>
  );
}

function DrawRow({ draw }: { draw: UnitDrawRow }) {
  const t = useTranslations('unit.built');
  const tKind = useTranslations('tags.itemKind');
  const { slot, item, kind, part, lot, positions, relation, certainty, at, via } = draw;
  return (
    <tr>
      <td data-label={t('slot')}>{slot}</td>
      <th scope="row">
        <CodeText code={item} kind="item" />
      </th>
      <td className={table.optional}>{kind !== null && tKind(kind)}</td>
      <td data-label={t('part')}>{part !== null && <TraceLink about="part" code={part} />}</td>
      <td data-label={t('lot')}>{lot !== null && <CodeText code={lot} kind="lot" />}</td>
      <td data-label={t('positions')}>{positions.join(', ')}</td>
      <td>
        <RelationTag relation={relation} />
      </td>
      <td>
        <CertaintyTag certainty={certainty} />
      </td>
      <td data-label={t('at')} className={table.optional}>
        <Moment at={at} /> {via.length > 0 && t('salvaged')}
      </td>
    </tr>
  );
}

function byStation(draws: readonly UnitDrawRow[]): { station: string | null; rows: UnitDrawRow[] }[] {
  const groups = new Map<string | null, UnitDrawRow[]>();
  for (const draw of draws) groups.set(draw.station, [...(groups.get(draw.station) ?? []), draw]);
  return [...groups].map(([station, rows]) => ({ station, rows }));
}
