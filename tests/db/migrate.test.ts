import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import pg from 'pg';
import { afterAll, beforeEach, describe, expect, inject, it } from 'vitest';
import { migrate } from '@/lib/data/migrate';
import '../support/provided-context';
import { makeTemporaryFolder } from '../support/temporary-folder';
import { withDatabase } from '../support/with-database';

const folder = makeTemporaryFolder();
const server = inject('databaseServer').ownerUrl;
const databases: string[] = [];
let url: string;

/** A function body and a comment with semicolons: the script must reach PostgreSQL whole. */
const firstMigration = `
  create schema "one"; -- first; with a semicolon
  create table "one".thing (n int);
  create function "one".refuse() returns trigger language plpgsql as $$
  begin
    raise exception 'never; really';
  end;
  $$;
  create trigger refuse before delete on "one".thing for each statement execute function "one".refuse();
  grant usage on schema "one" to reelkin_app;
  grant select on "one".thing to reelkin_app;
`;

beforeEach(async () => {
  const name = `reelkin_migrate_${process.pid}_${databases.length}`;
  await query(server, `create database ${name} template template0 encoding 'UTF8'`);
  databases.push(name);
  url = withDatabase(server, name);
});
afterAll(async () => {
  for (const name of databases) await query(server, `drop database ${name} with (force)`);
  folder.remove();
});

async function query(connectionString: string, sql: string): Promise<unknown[]> {
  const client = new pg.Client({ connectionString });
  await client.connect();
  try {
    return (await client.query(sql)).rows;
  } finally {
    await client.end();
  }
}

/** A prisma folder with these migrations, by name, for two PostgreSQL schemas. */
function prismaFolderWith(migrations: Record<string, string>): string {
  const path = join(folder.path, crypto.randomUUID());
  mkdirSync(join(path, 'migrations'), { recursive: true });
  writeFileSync(
    join(path, 'schema.prisma'),
    'datasource db {\n  provider = "postgresql"\n  schemas = ["one", "two"]\n}\n',
  );
  writeFileSync(join(path, 'migrations', 'migration_lock.toml'), 'provider = "postgresql"\n');
  for (const [name, sql] of Object.entries(migrations)) {
    mkdirSync(join(path, 'migrations', name));
    writeFileSync(join(path, 'migrations', name, 'migration.sql'), sql);
  }
  return path;
}

async function migrateReporting(prismaFolder: string): Promise<string[]> {
  const lines: string[] = [];
  await migrate(url, (line) => lines.push(line), prismaFolder);
  return lines;
}

describe('migrate', () => {
  it('applies what is new, in order, and nothing twice', async () => {
    const first = { '001_one': firstMigration };
    const both = { ...first, '002_two': 'create schema two; create table two.part (n int);' };
    expect(await migrateReporting(prismaFolderWith(first))).toEqual(['Migration 001_one applied']);
    expect(await migrateReporting(prismaFolderWith(both))).toEqual(['Migration 002_two applied']);
    expect(await migrateReporting(prismaFolderWith(both))).toEqual([]);
    await expect(query(url, 'delete from "one".thing')).rejects.toThrow('never; really');
    expect(await query(url, 'select count(*)::int as n from _prisma_migrations')).toEqual([{ n: 2 }]);
  });

  it('applies each migration once when several processes start at the same moment', async () => {
    const prismaFolder = prismaFolderWith({ '001_one': firstMigration });
    const reports = await Promise.all([1, 2, 3, 4].map(() => migrateReporting(prismaFolder)));
    expect(reports.flat()).toEqual(['Migration 001_one applied']);
  });

  it('changes nothing when one statement of the last migration fails', async () => {
    const failing = prismaFolderWith({
      '001_one': firstMigration,
      '002_bad': 'create schema two; select 1/0;',
    });
    await expect(migrateReporting(failing)).rejects.toThrow(/division by zero\. Nothing was changed/);
    expect(
      await query(url, `select to_regnamespace('one') as one, to_regclass('_prisma_migrations') as log`),
    ).toEqual([{ one: null, log: null }]);
    expect(await migrateReporting(prismaFolderWith({ '001_one': firstMigration }))).toHaveLength(1);
  });

  it('refuses a database that a newer version has migrated', async () => {
    await migrateReporting(prismaFolderWith({ '001_one': firstMigration, '002_two': 'create schema two;' }));
    const older = prismaFolderWith({ '001_one': firstMigration });
    await expect(migrateReporting(older)).rejects.toThrow(/newer Reelkin \(002_two\)/);
  });

  it('refuses a database that was migrated with another text', async () => {
    await migrateReporting(prismaFolderWith({ '001_one': firstMigration }));
    const edited = prismaFolderWith({ '001_one': `${firstMigration} select 1;` });
    await expect(migrateReporting(edited)).rejects.toThrow(/another text of 001_one/);
  });

  it('tells what a DBA must run when the user may not make the role or the schemas', async () => {
    const user = `reelkin_plain_${process.pid}`;
    await query(server, `create role ${user} login password 'plain'`);
    try {
      const plain = new URL(url);
      plain.username = user;
      plain.password = 'plain';
      await expect(migrate(plain.href, () => {})).rejects.toThrow(
        /GRANT reelkin_app TO "reelkin_plain_\d+";/,
      );
    } finally {
      await query(server, `drop role ${user}`);
    }
  });
});
