import type pg from 'pg';
import { z } from 'zod';

const sizeSchema = z.object({ bytes: z.coerce.number() });
const shareSchema = z.object({ share: z.coerce.number() });

export type Storage = {
  /** Everything that draws are made of, with indexes: mounts, unmounts, splices, slots, and all passes. */
  all: number;
  /** The same with only the passes at stations whose slots are drawn from. */
  drawing: number;
  textbook: number | null;
};

/** Bytes a unit that stand for its draws, indexes included. */
export async function measureStorage(
  client: pg.ClientBase,
  unitCount: number,
  hasTextbook: boolean,
): Promise<Storage> {
  const bytesOf = async (...tables: string[]): Promise<number> => {
    const { rows } = await client.query(
      'select sum(pg_total_relation_size(t::regclass)) as bytes from unnest($1::text[]) t',
      [tables],
    );
    return sizeSchema.parse(rows[0]).bytes / unitCount;
  };
  const { rows } = await client.query(
    `select count(*) filter (where station in (select station from read.plant_slot))::float8 / count(*) as share
     from read.pass`,
  );
  const { share } = shareSchema.parse(rows[0]);
  const passes = await bytesOf('read.pass');
  const others = await bytesOf(
    'read.mount',
    'read.unmount',
    'read.splice',
    'read.slot_doubt',
    'read.direct_draw',
    'read.removal',
    'read.salvage',
    'read.plant_slot',
    'read.bom_slot',
  );
  return {
    all: passes + others,
    drawing: passes * share + others,
    textbook: hasTextbook ? await bytesOf('textbook.draw') : null,
  };
}
