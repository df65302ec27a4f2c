import { createWriteStream, rmSync } from 'node:fs';
import { join } from 'node:path';
import { pipeline } from 'node:stream/promises';
import { DuckDBInstance } from '@duckdb/node-api';
import type pg from 'pg';
import { to as copyTo } from 'pg-copy-streams';

export type DuckModel = {
  whereUsed(item: string): Promise<Record<string, unknown>[]>;
  close(): void;
};

const EXPORTS = {
  draw: `select unit, item, relation, is_certain, array_to_string(through, ' ') as through from textbook.draw`,
  place: `
    select u.unit, u.product, u.revision, o.place_station as station, o.container, c.shipment, c.customer,
           case when o.place = 'container' and c.shipment is not null then 'shipped' else o.place end as place
    from read.unit u
    left join read.unit o on o.unit = coalesce(u.outermost, u.unit)
    left join read.container c on c.container = o.container and o.place = 'container'`,
};

const WHERE_USED = `
  select d.unit, p.product, p.revision, case when d.is_certain then 'certain' else 'possible' end as certainty,
         d.relation, p.place, p.station, p.container, p.shipment, p.customer, d.through
  from draw d left join place p on p.unit = d.unit
  where d.item = $1 order by d.unit`;

/** The textbook's rows in DuckDB in memory, with an index on the item. */
export async function openDuckModel(client: pg.ClientBase, folder: string): Promise<DuckModel> {
  const instance = await DuckDBInstance.create(':memory:');
  const duck = await instance.connect();
  for (const [table, query] of Object.entries(EXPORTS)) {
    const path = join(folder, `${table}.csv`);
    const source = client.query(copyTo(`copy (${query}) to stdout with (format csv, header)`));
    await pipeline(source, createWriteStream(path));
    await duck.run(`create table ${table} as select * from read_csv('${path}', header = true)`);
    rmSync(path);
  }
  await duck.run('create index draw_of_item on draw (item)');
  await duck.run('create index place_of_unit on place (unit)');
  const statement = await duck.prepare(WHERE_USED);
  return {
    whereUsed: async (item) => {
      statement.bindVarchar(1, item);
      const reader = await statement.runAndReadAll();
      return reader.getRowObjects();
    },
    close: () => {
      duck.closeSync();
      instance.closeSync();
    },
  };
}
