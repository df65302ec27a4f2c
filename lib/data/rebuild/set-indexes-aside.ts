import { z } from 'zod';
import type { Queryable } from '@/lib/data/pool';

const indexSchema = z.object({ name: z.string(), definition: z.string() });

/**
 * Drops the indexes of a schema that no constraint needs, and returns what makes them again: an index over loaded rows
 * is made many times faster than one that grows with them.
 */
export async function setIndexesAside(db: Queryable, schema: 'log' | 'read'): Promise<() => Promise<void>> {
  const { rows } = await db.query(
    `select format('%I.%I', n.nspname, c.relname) as name, pg_get_indexdef(c.oid) as definition
     from pg_index i
     join pg_class c on c.oid = i.indexrelid
     join pg_namespace n on n.oid = c.relnamespace
     where n.nspname = $1 and not exists (select from pg_constraint k where k.conindid = i.indexrelid)
     order by c.relname`,
    [schema],
  );
  const indexes = rows.map((row) => indexSchema.parse(row));
  for (const { name } of indexes) await db.query(`drop index ${name}`);
  return async () => {
    for (const { definition } of indexes) await db.query(definition);
  };
}
