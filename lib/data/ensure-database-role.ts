import pg from 'pg';
import { z } from 'zod';
import { DatabaseProblem } from '@/lib/data/database-problem';

/** The role that the application works under: it may append to the log and never change it. It cannot log in. */
const applicationRole = 'reelkin_app';
const oldestServerVersion = 150_000;
const attemptsMax = 5;
const insufficientPrivilege = '42501';
/** unique_violation, duplicate_object and "tuple concurrently updated". */
const raceCodes: ReadonlySet<string | undefined> = new Set(['23505', '42710', 'XX000']);

const stateSchema = z.object({
  version: z.coerce.number(),
  versionText: z.string(),
  encoding: z.string(),
  userName: z.string(),
  databaseName: z.string(),
  roleExists: z.boolean(),
  mayTakeRole: z.boolean(),
  mayCreateSchema: z.boolean(),
  mayCreateInPublic: z.boolean(),
});

type DatabaseState = z.infer<typeof stateSchema>;

/**
 * Makes sure that the server is new enough, that the role exists and that the connecting user may take it on, and
 * may create what migrations create. Throws `DatabaseProblem` with the statements for a DBA where it may not.
 */
export async function ensureDatabaseRole(databaseUrl: string): Promise<void> {
  const client = new pg.Client({ connectionString: databaseUrl, connectionTimeoutMillis: 10_000 });
  client.on('error', () => {});
  await connect(client);
  try {
    for (let attempt = 1; !(await tryEnsure(client, attempt)); attempt += 1) {}
  } finally {
    await client.end();
  }
}

/**
 * Roles belong to the whole server, and no lock does: the servers of two databases may make the role at the same
 * moment. False when another one was faster, and looking again will find its role.
 */
async function tryEnsure(client: pg.Client, attempt: number): Promise<boolean> {
  const state = await readState(client);
  refuseUnfit(state);
  try {
    if (!state.roleExists) await client.query(`create role ${applicationRole} nologin`);
    if (!state.mayTakeRole) {
      await client.query(`grant ${applicationRole} to ${client.escapeIdentifier(state.userName)}`);
    }
    return true;
  } catch (error) {
    const code = error instanceof pg.DatabaseError ? error.code : undefined;
    if (code === insufficientPrivilege) throw missingRight(state);
    if (attempt < attemptsMax && raceCodes.has(code)) return false;
    throw error;
  }
}

async function connect(client: pg.Client): Promise<void> {
  try {
    await client.connect();
  } catch (error) {
    const reason = error instanceof Error && error.message !== '' ? error.message : String(error);
    throw new DatabaseProblem(
      `Cannot connect to the database ${client.database} at ${client.host}, port ${client.port}: ${reason}`,
      {
        cause: error,
      },
    );
  }
}

async function readState(client: pg.Client): Promise<DatabaseState> {
  // From version 16 on, membership without the SET option does not let a user take the role on.
  const { rows } = await client.query(
    `select current_setting('server_version_num') as version,
            current_setting('server_version') as "versionText",
            current_setting('server_encoding') as encoding,
            current_user as "userName",
            current_database() as "databaseName",
            role.oid is not null as "roleExists",
            coalesce(pg_has_role(current_user, role.oid,
              case when current_setting('server_version_num')::int >= 160000 then 'SET' else 'MEMBER' end),
              false) as "mayTakeRole",
            has_database_privilege(current_database(), 'CREATE') as "mayCreateSchema",
            coalesce(has_schema_privilege(to_regnamespace('public')::oid, 'CREATE'), false) as "mayCreateInPublic"
       from (select 1) as one left join pg_roles as role on role.rolname = $1`,
    [applicationRole],
  );
  return stateSchema.parse(rows[0]);
}

function refuseUnfit(state: DatabaseState): void {
  if (state.version < oldestServerVersion) {
    throw new DatabaseProblem(`Reelkin needs PostgreSQL 15 or later; this server is ${state.versionText}.`);
  }
  if (state.encoding !== 'UTF8') {
    throw new DatabaseProblem(
      `The database ${state.databaseName} has encoding ${state.encoding}; Reelkin needs UTF8. Make it with: CREATE DATABASE … ENCODING 'UTF8' TEMPLATE template0`,
    );
  }
  if (!state.mayCreateSchema || !state.mayCreateInPublic) throw missingRight(state);
}

function missingRight({ userName, databaseName, roleExists }: DatabaseState): DatabaseProblem {
  const user = pg.escapeIdentifier(userName);
  const database = pg.escapeIdentifier(databaseName);
  return new DatabaseProblem(
    [
      `The database user ${userName} lacks a right that Reelkin needs. Ask a DBA to run, connected to ${databaseName}:`,
      ...(roleExists ? [] : [`  CREATE ROLE ${applicationRole} NOLOGIN;`]),
      `  GRANT ${applicationRole} TO ${user};`,
      `  GRANT CREATE ON DATABASE ${database} TO ${user};`,
      `  GRANT CREATE ON SCHEMA public TO ${user};`,
    ].join('\n'),
  );
}
