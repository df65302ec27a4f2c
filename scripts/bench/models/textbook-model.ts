import type pg from 'pg';
import { openPool } from '@/lib/data/pool';
import { CopyRows } from '@/lib/data/rebuild/copy-rows';
import { asWriter } from '@/lib/data/transaction';
import { textbookRows } from '@/scripts/bench/models/textbook-rows';

const COLUMNS = ['unit', 'item', 'relation', 'is_certain', 'station', 'slot', 'at', 'through'];

/** Makes the textbook model beside Reelkin's tables: one row a unit and item, found by either. */
export async function loadTextbook(url: string, unitCount: number): Promise<void> {
  const pool = openPool({ url, connectionCountMax: 1, use: 'plain' });
  try {
    await asWriter(pool, async (db) => {
      await db.turn;
      await db.query(`set local maintenance_work_mem = '1GB'`);
      await db.query('create schema textbook');
      await db.query(
        `create table textbook.draw (
           unit text collate "C" not null, item text collate "C" not null, relation text not null,
           is_certain boolean not null, station text collate "C", slot text collate "C", at timestamptz,
           through text[] collate "C" not null)`,
      );
      const rows = new CopyRows(db.client);
      for (const row of textbookRows(unitCount)) await rows.add('textbook.draw', COLUMNS, [row]);
      await rows.end();
      await db.query('create index draw_of_unit on textbook.draw (unit)');
      await db.query('create index draw_of_item on textbook.draw (item)');
    });
    await pool.query('vacuum (analyze) textbook.draw');
  } finally {
    await pool.end();
  }
}

/** Gives back the textbook model's room on the disk. */
export async function dropTextbook(url: string): Promise<void> {
  const pool = openPool({ url, connectionCountMax: 1, use: 'plain' });
  try {
    await pool.query('drop schema if exists textbook cascade');
  } finally {
    await pool.end();
  }
}

/** Where-used by the textbook: a look-up, and the same places as Reelkin's. */
export const TEXTBOOK_WHERE_USED = `
  select d.unit, u.product, u.revision, case when d.is_certain then 'certain' else 'possible' end as certainty,
         d.relation, case when o.place = 'container' and c.shipment is not null then 'shipped' else o.place end as place,
         o.place_station as station, o.container, c.shipment, c.customer, d.through
  from textbook.draw d
  left join read.unit u on u.unit = d.unit
  left join read.unit o on o.unit = coalesce(u.outermost, d.unit)
  left join read.container c on c.container = o.container and o.place = 'container'
  where d.item = $1
  order by d.unit`;

/** The draws of an as-built record by the textbook, with what the record says of each item. */
const TEXTBOOK_DRAWS = `
  select d.item, i.kind, i.part, i.lot, d.station, d.slot, d.at, d.relation,
         case when d.is_certain then 'certain' else 'possible' end as certainty, b.positions
  from textbook.draw d
  left join read.unit u on u.unit = d.unit
  left join read.item i on i.item = d.item
  left join read.bom_slot b
    on b.station = d.station and b.slot = d.slot and b.product = u.product and b.revision = u.revision
  where d.unit = $1
  order by d.at, d.item`;

const TEXTBOOK_EVENTS = `select * from log.event where unit = $1 order by at, id`;
const TEXTBOOK_UNIT = `
  select u.*, c.shipment, c.customer from read.unit u
  left join read.container c on c.container = u.container where u.unit = $1`;
const TEXTBOOK_FAMILY = `select * from read.joining where inner_unit = $1 or outer_unit = $1`;

export type TextbookDraw = { item: string; relation: string; certainty: string };

/** The textbook's as-built record: draws, events, place and family, asked for together. */
export async function textbookAsBuilt(pool: pg.Pool, unit: string): Promise<TextbookDraw[]> {
  const client = await pool.connect();
  try {
    const ask = (name: string, text: string) => client.query({ name, text, values: [unit] });
    const [draws] = await Promise.all([
      ask('textbook-draws', TEXTBOOK_DRAWS),
      ask('textbook-events', TEXTBOOK_EVENTS),
      ask('textbook-unit', TEXTBOOK_UNIT),
      ask('textbook-family', TEXTBOOK_FAMILY),
    ]);
    return draws.rows;
  } finally {
    client.release();
  }
}
