import pg from 'pg';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { createTestDatabase, type TestDatabase } from '../support/test-database';

let database: TestDatabase;

beforeAll(async () => {
  database = await createTestDatabase();
});
afterAll(() => database.drop());

async function query(connectionString: string, sql: string): Promise<unknown[]> {
  const client = new pg.Client({ connectionString });
  await client.connect();
  try {
    return (await client.query(sql)).rows;
  } finally {
    await client.end();
  }
}

describe('a test database', () => {
  it('is migrated, and its owner may take on the application role', async () => {
    expect(await query(database.ownerUrl, `select count(*) > 0 as migrated from _prisma_migrations`)).toEqual(
      [{ migrated: true }],
    );
    expect(
      await query(`${database.ownerUrl}?options=-c%20role%3Dreelkin_app`, 'select current_user'),
    ).toEqual([{ current_user: 'reelkin_app' }]);
  });

  it('has a login that holds the application role and cannot become the owner', async () => {
    expect(await query(database.url, `select pg_has_role('reelkin_app', 'member') as member`)).toEqual([
      { member: true },
    ]);
    await expect(query(database.url, 'create table public.mine (n int)')).rejects.toThrow(
      /permission denied/,
    );
    const owner = decodeURIComponent(new URL(database.ownerUrl).username);
    await expect(query(database.url, `set role "${owner}"`)).rejects.toThrow(/permission denied/);
  });
});
