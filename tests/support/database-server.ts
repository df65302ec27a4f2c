import { randomBytes } from 'node:crypto';
import pg from 'pg';
import type { TestProject } from 'vitest/node';
import { migrate } from '@/lib/data/migrate';
import { openDatabaseServer } from './open-database-server';
import './provided-context';
import { withDatabase } from './with-database';

/** Global setup of the database tests: one server, and one migrated database that each test file gets a copy of. */
export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const server = await openDatabaseServer();
  const suffix = randomBytes(6).toString('hex');
  const template = `reelkin_template_${suffix}`;
  const appUser = `reelkin_test_${suffix}`;
  const appPassword = randomBytes(16).toString('hex');

  await runAsOwner(server.ownerUrl, [`create database ${template} template template0 encoding 'UTF8'`]);
  await migrate(withDatabase(server.ownerUrl, template), () => {});
  await runAsOwner(server.ownerUrl, [
    `create role ${appUser} login password '${appPassword}'`,
    `grant reelkin_app to ${appUser}`,
  ]);
  project.provide('databaseServer', { ownerUrl: server.ownerUrl, template, appUser, appPassword });

  return async () => {
    await runAsOwner(server.ownerUrl, [`drop database ${template} with (force)`, `drop role ${appUser}`]);
    await server.close();
  };
}

async function runAsOwner(ownerUrl: string, statements: readonly string[]): Promise<void> {
  const client = new pg.Client({ connectionString: ownerUrl });
  await client.connect();
  try {
    for (const statement of statements) await client.query(statement);
  } finally {
    await client.end();
  }
}
