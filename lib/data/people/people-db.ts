import { PrismaPg } from '@prisma/adapter-pg';
import { APPLICATION_ROLE, openPool } from '@/lib/data/pool';
import { PrismaClient } from '@/prisma/generated/client';

// Sign-ins are rare and each request asks for one row.
const CONNECTION_COUNT_MAX = 4;

/** The tables of people and setup links. */
export type PeopleDb = PrismaClient;

/** Opens the people's tables under the application's narrow role; the caller disconnects. */
export function openPeopleDb(url: string): PeopleDb {
  const pool = openPool({
    url,
    use: 'plain',
    role: APPLICATION_ROLE,
    connectionCountMax: CONNECTION_COUNT_MAX,
  });
  const adapter = new PrismaPg(pool, {
    disposeExternalPool: true,
    // A connection that breaks while idle is replaced; without a listener it would end the process.
    onPoolError: () => undefined,
  });
  return new PrismaClient({ adapter });
}
