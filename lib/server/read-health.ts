import { z } from 'zod';
import { database } from '@/lib/server/database';
import packageFile from '@/package.json' with { type: 'json' };

const WAIT_MS = 3000;

/** Whether the server and its database answer, and which version runs. */
export const healthSchema = z.object({
  status: z.enum(['ok', 'failing']),
  database: z.enum(['ok', 'failing']),
  version: z.string(),
});

/** Asks the database for a sign of life, for at most three seconds. */
export async function readHealth(): Promise<z.infer<typeof healthSchema>> {
  const { version } = packageFile;
  const isAlive = await Promise.race([
    database()
      .pool.query('select 1')
      .then(() => true)
      .catch(() => false),
    new Promise<boolean>((resolve) => setTimeout(resolve, WAIT_MS, false).unref()),
  ]);
  return isAlive
    ? { status: 'ok', database: 'ok', version }
    : { status: 'failing', database: 'failing', version };
}
