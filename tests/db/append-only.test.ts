import pg from 'pg';
import { describe, expect, it } from 'vitest';
import { putPlant } from '@/lib/server/put-plant';
import { randomHistory } from '@/tests/reference/model/random-history';
import { freshDatabase } from '@/tests/support/fresh-database';
import { recordHistory } from '@/tests/support/record-history';

const LOG_TABLES = ['log.event', 'log.refusal', 'log.judgement'];
const { pool, ownerUrl } = freshDatabase();

async function fill(): Promise<void> {
  const { plant, events } = randomHistory(7);
  await putPlant(plant, 'test');
  await recordHistory(events);
  await recordHistory([
    { ...events[0], id: '0198c0de-0000-7000-8000-00000000ffff', gate: 'enforce', at: '2026-03-02T08:00:00Z' },
  ]);
}

describe('the log is append-only in the database itself', () => {
  it('refuses UPDATE, DELETE and TRUNCATE to the role of the application', async () => {
    await fill();
    const role = await pool().query('select current_user as role');
    expect(role.rows[0]).toEqual({ role: 'reelkin_app' });
    for (const table of LOG_TABLES) {
      const column = table === 'log.event' ? 'recorded_by' : 'event';
      for (const statement of [
        `update ${table} set ${column} = ${column}`,
        `delete from ${table}`,
        `truncate ${table}`,
        `truncate ${table} cascade`,
      ])
        await expect(pool().query(statement), statement).rejects.toThrow(/permission denied|append-only/);
    }
  });

  it('refuses them even to the owner of the tables', async () => {
    const owner = new pg.Client({ connectionString: ownerUrl() });
    await owner.connect();
    try {
      for (const table of LOG_TABLES) {
        const before = await owner.query(`select count(*) as count from ${table}`);
        expect(Number(before.rows[0].count), table).toBeGreaterThan(0);
        for (const statement of [`delete from ${table}`, `truncate ${table}`])
          await expect(owner.query(statement), statement).rejects.toThrow(/append-only/);
        const after = await owner.query(`select count(*) as count from ${table}`);
        expect(after.rows).toEqual(before.rows);
      }
    } finally {
      await owner.end();
    }
  });

  it('keeps the application from changing what guards the log', async () => {
    for (const statement of [
      'alter table log.event disable trigger all',
      'drop table log.event',
      'drop trigger append_only on log.event',
      'create or replace function log.refuse_change() returns trigger language plpgsql as $$ begin return null; end $$',
    ])
      await expect(pool().query(statement), statement).rejects.toThrow(/must be owner|permission denied/);
  });
});
