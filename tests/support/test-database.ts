import { randomBytes } from 'node:crypto';
import pg from 'pg';
import { inject } from 'vitest';
import './provided-context';
import { withDatabase } from './with-database';

const DROP_ATTEMPTS = 8;

/**
 * A migrated, empty database of one's own. `ownerUrl` connects as its owner, as `DATABASE_URL` does in a server;
 * `url` as a login that has the application's role and no way out of it. `drop` ends all its sessions.
 */
export type TestDatabase = { url: string; ownerUrl: string; drop: () => Promise<void> };

/** Makes a database for one test file; call `drop` in `afterAll`, after ending one's own pools. */
export async function createTestDatabase(): Promise<TestDatabase> {
  const { ownerUrl, template, appUser, appPassword } = inject('databaseServer');
  const name = `reelkin_test_${randomBytes(8).toString('hex')}`;
  await runOnServer(ownerUrl, `create database ${name} template ${template}`);
  return {
    url: withDatabase(ownerUrl, name, { user: appUser, password: appPassword }),
    ownerUrl: withDatabase(ownerUrl, name),
    drop: () => dropDatabase(ownerUrl, name),
  };
}

/** A database that a background worker of the server is busy with can be dropped only once the worker has left. */
async function dropDatabase(ownerUrl: string, name: string): Promise<void> {
  for (let attempt = 1; ; attempt += 1) {
    try {
      return await runOnServer(ownerUrl, `drop database if exists ${name} with (force)`);
    } catch (error) {
      if (attempt === DROP_ATTEMPTS) throw error;
      await new Promise((resolve) => setTimeout(resolve, 200 * attempt));
    }
  }
}

async function runOnServer(ownerUrl: string, statement: string): Promise<void> {
  const client = new pg.Client({ connectionString: ownerUrl });
  await client.connect();
  try {
    await client.query(statement);
  } finally {
    await client.end();
  }
}
