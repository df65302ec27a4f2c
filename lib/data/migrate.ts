import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { PrismaPg } from '@prisma/adapter-pg';
import { bindMigrationAwareSqlAdapterFactory } from '@prisma/driver-adapter-utils';
import type { DiagnoseMigrationHistoryOutput } from '@prisma/schema-engine-wasm/schema_engine_bg';
import pg from 'pg';
import { DatabaseProblem } from '@/lib/data/database-problem';
import { ensureDatabaseRole } from '@/lib/data/ensure-database-role';
import { loadSchemaEngine } from '@/lib/data/load-schema-engine';

const ownPrismaFolder = join(dirname(dirname(dirname(fileURLToPath(import.meta.url)))), 'prisma');

/** Any number that nothing else on the server takes: one migration at a time in a database. */
const migrationLockKey = 7_338_355_461;

/**
 * Brings the database to the newest migration, all or nothing, and may be called by any number of processes at
 * once. `databaseUrl` is the owner's; `prismaFolder` holds schema and migrations. Throws `DatabaseProblem` with what a DBA must do when a right is missing.
 */
export async function migrate(
  databaseUrl: string,
  report: (line: string) => void,
  prismaFolder: string = ownPrismaFolder,
): Promise<void> {
  await ensureDatabaseRole(databaseUrl);
  const pool = new pg.Pool({
    connectionString: databaseUrl,
    max: 1,
    idleTimeoutMillis: 0,
    // The whole run is one transaction on one connection. Should the pool ever open a second one, it cannot write.
    options: '-c default_transaction_read_only=on',
    application_name: 'reelkin-migrate',
  });
  pool.on('error', () => {});
  try {
    await pool.query('begin read write');
    await pool.query('select pg_advisory_xact_lock($1)', [migrationLockKey]);
    const applied = await applyMigrations(pool, prismaFolder);
    await pool.query('commit');
    for (const name of applied) report(`Migration ${name} applied`);
  } finally {
    await pool.end();
  }
}

async function applyMigrations(pool: pg.Pool, prismaFolder: string): Promise<string[]> {
  let cause: unknown = null;
  const adapter = new WholeScriptPrismaPg(pool, (error) => {
    cause ??= error;
  });
  const schemaPath = join(prismaFolder, 'schema.prisma');
  const SchemaEngine = await loadSchemaEngine();
  const engine = await SchemaEngine.new(
    { datamodels: [[schemaPath, readFileSync(schemaPath, 'utf8')]] },
    () => {},
    bindMigrationAwareSqlAdapterFactory(adapter),
  );
  const filters = { externalTables: [], externalEnums: [] };
  const migrationsList = readMigrations(join(prismaFolder, 'migrations'));
  try {
    if (await wasMigratedBefore(pool)) {
      const diagnosis = { migrationsList, filters, optInToShadowDatabase: false };
      refuseOtherHistory(await engine.diagnoseMigrationHistory(diagnosis));
    }
    return (await engine.applyMigrations({ migrationsList, filters })).appliedMigrationNames;
  } catch (error) {
    if (error instanceof DatabaseProblem) throw error;
    const reason = [cause, error].find((candidate) => candidate instanceof Error);
    throw new DatabaseProblem(
      `The database could not be migrated: ${reason?.message ?? String(error)}. Nothing was changed.`,
      { cause: error },
    );
  } finally {
    engine.free();
  }
}

async function wasMigratedBefore(pool: pg.Pool): Promise<boolean> {
  const { rowCount } = await pool.query(`select where to_regclass('_prisma_migrations') is not null`);
  return rowCount === 1;
}

/** A database that a newer or another Reelkin has migrated must not be written by this one. */
function refuseOtherHistory({ history, editedMigrationNames }: DiagnoseMigrationHistoryOutput): void {
  const unknown =
    history !== null && 'unpersistedMigrationNames' in history ? history.unpersistedMigrationNames : [];
  if (unknown.length > 0) {
    throw new DatabaseProblem(
      `The database was migrated by a newer Reelkin (${unknown.join(', ')}). Start that version, or restore a backup made before.`,
    );
  }
  if (editedMigrationNames.length > 0) {
    throw new DatabaseProblem(
      `The database was migrated with another text of ${editedMigrationNames.join(', ')} than this Reelkin holds. Start the version that made it.`,
    );
  }
}

/**
 * Prisma's adapter cuts a script at every semicolon, which breaks function bodies; PostgreSQL itself takes it whole.
 * It also loses the first error of an aborted transaction, so that one is handed out.
 */
class WholeScriptPrismaPg extends PrismaPg {
  readonly #pool: pg.Pool;
  readonly #onScriptError: (error: unknown) => void;

  constructor(pool: pg.Pool, onScriptError: (error: unknown) => void) {
    super(pool);
    this.#pool = pool;
    this.#onScriptError = onScriptError;
  }

  override async connect(): ReturnType<PrismaPg['connect']> {
    const adapter = await super.connect();
    adapter.executeScript = async (script) => {
      try {
        await this.#pool.query(script);
      } catch (error) {
        this.#onScriptError(error);
        throw error;
      }
    };
    return adapter;
  }
}

function readMigrations(baseDir: string) {
  const lockfile = join(baseDir, 'migration_lock.toml');
  const names = existsSync(baseDir) ? readdirSync(baseDir, { withFileTypes: true }) : [];
  return {
    baseDir,
    lockfile: {
      path: 'migration_lock.toml',
      content: existsSync(lockfile) ? readFileSync(lockfile, 'utf8') : null,
    },
    shadowDbInitScript: '',
    migrationDirectories: names
      .filter((entry) => entry.isDirectory())
      .map((entry) => entry.name)
      .sort()
      .map((name) => ({
        path: name,
        migrationFile: {
          path: 'migration.sql',
          content: { tag: 'ok' as const, value: readFileSync(join(baseDir, name, 'migration.sql'), 'utf8') },
        },
      })),
  };
}
