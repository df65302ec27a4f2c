import { z } from 'zod';
import type { Queryable } from '@/lib/data/pool';

// A plant numbers its cartons in a row: one of the last of the same beginning has the shape, or hardly any has.
const CONTAINERS_MAX = 1000;

const rowSchema = z.object({ found: z.boolean() });

/**
 * Whether an earlier container's code differs from a code in its digits only. Direction: container_pkey backwards over
 * at most 1,000 codes that begin as this one does before its first digit.
 */
export async function hasContainerLike(db: Queryable, code: string): Promise<boolean> {
  const beginning = /^\D*/.exec(code)?.[0] ?? '';
  const { rows } = await db.query(
    `select exists (
       select from (
         select container from read.container
         where container >= $1 and container < $1 || chr(1114111)
         order by container desc limit ${CONTAINERS_MAX}
       ) c
       where translate(c.container, '123456789', '000000000') = translate($2, '123456789', '000000000')
     ) as found`,
    [beginning, code],
  );
  return rowSchema.parse(rows[0]).found;
}
