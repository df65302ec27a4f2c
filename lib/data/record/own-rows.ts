import type { Queryable } from '@/lib/data/pool';
import { type Row, readColumns, rowsSource } from '@/lib/data/rows';
import { doubtUs, type LoggedEvent } from '@/lib/domain/events/logged-event';
import { directDrawsOf, passOf } from '@/lib/domain/genealogy/draw-rows';
import { formatInstant } from '@/lib/domain/time';

type OwnTable = {
  table: string;
  /** Columns with their types. */
  columns: string;
  /** The rows that an event owns in this table; nothing but the event decides them. */
  rowsOf: (event: LoggedEvent) => Row[];
};

const time = (us: number) => formatInstant(us);

const OWN_TABLES: readonly OwnTable[] = [
  {
    table: 'read.pass',
    columns:
      'station text, unit text, at timestamptz, low timestamptz, high timestamptz, event uuid, breadth smallint',
    rowsOf: (event) => {
      if (event.type !== 'unit.processed') return [];
      const { station, unit, lowUs, highUs, breadth } = passOf(event);
      return [
        {
          station,
          unit,
          at: time(event.atUs),
          low: time(lowUs),
          high: time(highUs),
          event: event.id,
          breadth,
        },
      ];
    },
  },
  {
    table: 'read.direct_draw',
    columns:
      'event uuid, ordinal integer, source text, unit text, item text, station text, at timestamptz, positions text[]',
    rowsOf: (event) =>
      directDrawsOf(event).map(({ source, item, positions }, ordinal) => ({
        event: event.id,
        ordinal,
        source,
        unit: 'unit' in event.body ? event.body.unit : null,
        item,
        station: event.station ?? null,
        at: time(event.atUs),
        positions,
      })),
  },
  {
    table: 'read.removal',
    columns: 'event uuid, unit text, position text, at timestamptz',
    rowsOf: (event) =>
      event.type === 'part.removed'
        ? [{ event: event.id, unit: event.body.unit, position: event.body.position, at: time(event.atUs) }]
        : [],
  },
  {
    table: 'read.salvage',
    columns: 'event uuid, unit text, position text, from_unit text, from_position text, at timestamptz',
    rowsOf: (event) => {
      if (event.type !== 'part.installed') return [];
      const { unit, position, fromUnit, fromPosition } = event.body;
      if (fromUnit === undefined || fromPosition === undefined) return [];
      const at = time(event.atUs);
      return [{ event: event.id, unit, position, from_unit: fromUnit, from_position: fromPosition, at }];
    },
  },
  {
    table: 'read.joining',
    columns: 'event uuid, inner_unit text, outer_unit text, position text, at timestamptz',
    rowsOf: (event) => {
      if (event.type !== 'unit.joined') return [];
      const { unit, into, position } = event.body;
      return [{ event: event.id, inner_unit: unit, outer_unit: into, position, at: time(event.atUs) }];
    },
  },
  {
    table: 'read.separation',
    columns: 'event uuid, inner_unit text, outer_unit text, at timestamptz',
    rowsOf: (event) => {
      if (event.type !== 'unit.separated') return [];
      const { unit, from } = event.body;
      return [{ event: event.id, inner_unit: unit, outer_unit: from, at: time(event.atUs) }];
    },
  },
  {
    table: 'read.mount',
    columns:
      'event uuid, station text, slot text, item text, from_at timestamptz, from_low timestamptz, from_high timestamptz, is_spliced boolean',
    rowsOf: (event) => {
      if (event.type !== 'item.mounted' && event.type !== 'item.spliced') return [];
      const { station, atUs, id, body } = event;
      const doubt = doubtUs(event);
      const isSpliced = event.type === 'item.spliced';
      return [
        {
          event: id,
          station,
          slot: body.slot,
          item: isSpliced ? event.body.to : event.body.item,
          is_spliced: isSpliced,
          from_at: time(atUs),
          from_low: time(atUs - doubt),
          from_high: time(atUs + doubt),
        },
      ];
    },
  },
  {
    table: 'read.splice',
    columns: 'event uuid, item text, grey_units integer',
    rowsOf: (event) =>
      event.type === 'item.spliced'
        ? [{ event: event.id, item: event.body.from, grey_units: event.body.greyUnits ?? null }]
        : [],
  },
  {
    table: 'read.unmount',
    columns: 'event uuid, station text, slot text, item text, at timestamptz, doubt interval',
    rowsOf: (event) => {
      if (event.type !== 'item.unmounted') return [];
      const { station, atUs, id, body } = event;
      const doubt = `${doubtUs(event)} microseconds`;
      return [{ event: id, station, slot: body.slot, item: body.item, at: time(atUs), doubt }];
    },
  },
  {
    table: 'read.device_retirement',
    columns: 'event uuid, device text, at timestamptz, reason text',
    rowsOf: (event) =>
      event.type === 'device.retired'
        ? [{ event: event.id, device: event.body.device, at: time(event.atUs), reason: event.body.reason }]
        : [],
  },
  {
    table: 'read.label_print',
    columns: 'event uuid, kind text, code text, at timestamptz, copies integer',
    rowsOf: (event) => {
      if (event.type !== 'label.printed') return [];
      const { target, copies } = event.body;
      return [{ event: event.id, kind: target.kind, code: target.id, at: time(event.atUs), copies }];
    },
  },
];

/** Rows that events own in one table, with its columns. */
export type OwnRows = { table: string; columns: ReturnType<typeof readColumns>; rows: Row[] };

/** The rows that events own, table by table; tables without any are left out. */
export function ownRowsOf(events: readonly LoggedEvent[]): OwnRows[] {
  return OWN_TABLES.flatMap(({ table, columns, rowsOf }) => {
    const rows = events.flatMap(rowsOf);
    return rows.length === 0 ? [] : [{ table, columns: readColumns(columns), rows }];
  });
}

/** Adds the rows that events own, one statement a table that has any. */
export async function insertOwnRows(db: Queryable, events: readonly LoggedEvent[]): Promise<void> {
  await Promise.all(
    ownRowsOf(events).map(({ table, columns, rows }) => {
      const { names, select, from, values } = rowsSource(columns, rows);
      return db.query(`insert into ${table} (${names}) select ${select} from ${from}`, values);
    }),
  );
}

/** Takes away the rows that an event owns: it was voided. */
export async function deleteOwnRows(db: Queryable, event: LoggedEvent): Promise<void> {
  for (const { table, rowsOf } of OWN_TABLES) {
    const [row] = rowsOf(event);
    if (row === undefined) continue;
    if (table === 'read.pass')
      // By its only index: station, breadth, high.
      await db.query(
        'delete from read.pass where station = $1 and breadth = $2 and high = $3::timestamptz and event = $4',
        [row.station, row.breadth, row.high, event.id],
      );
    else await db.query(`delete from ${table} where event = $1`, [event.id]);
  }
}
