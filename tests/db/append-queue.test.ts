import pg from 'pg';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { database } from '@/lib/server/database';
import { dumpReadTables } from '@/tests/support/dump-read-tables';
import { freshDatabase } from '@/tests/support/fresh-database';
import { keptOf, openFloor } from '@/tests/support/gate-floor';

const { ownerUrl } = freshDatabase();

let owner: pg.Client;
beforeAll(async () => {
  owner = new pg.Client({ connectionString: ownerUrl() });
  await owner.connect();
  // Stands for anything that PostgreSQL cannot hold and no schema foresaw.
  await owner.query(`
    create function public.choke() returns trigger language plpgsql as $$
    begin
      if new.body ->> 'unit' like 'W-choke%' then
        raise exception 'value overflows numeric format' using errcode = new.body ->> 'order';
      end if;
      return new;
    end $$;
    create trigger choke before insert on log.event for each row execute function public.choke()`);
});
afterAll(() => owner.end());

/** A start that PostgreSQL answers with an error of the given kind. */
function choking(start: (unit: string) => { body: object }, sqlState: string) {
  const event = start('W-choke');
  return { ...event, body: { ...event.body, order: sqlState } };
}

describe('requests that share a transaction', () => {
  it('share neither their fate nor their answers', async () => {
    const { send, start, say, print } = await openFloor();
    const events = Array.from({ length: 30 }, (_, index) => start(`W-a${index}`));
    const unknown = say.passed('W-none', print);
    const answers = await Promise.all([
      ...events.map((event) => send(event)),
      send(unknown),
      send(...events),
    ]);
    expect(answers.slice(0, 30).flat()).toEqual(Array(30).fill('recorded'));
    expect(answers[30]).toEqual(['refused unknown_unit']);
    expect(answers[31]).toEqual(Array(30).fill('already_recorded'));
  });

  it('are each tried alone when PostgreSQL fails on one of them', async () => {
    const { send, start } = await openFloor();
    const bad = choking(start, '22003');
    const others = Array.from({ length: 10 }, (_, index) => start(`W-b${index}`));
    const [refused, ...answers] = await Promise.all([send(bad), ...others.map((event) => send(event))]);
    expect(refused).toEqual(['refused malformed']);
    expect(answers.flat()).toEqual(Array(10).fill('recorded'));
  });
});

describe('a request with an event that PostgreSQL cannot hold', () => {
  it('loses only that event', async () => {
    const { send, start, say, print } = await openFloor();
    const events = [
      start('W30'),
      choking(start, '22003'),
      say.passed('W30', print),
      choking(start, '54000'),
      start('W31'),
    ];
    expect(await send(...events)).toEqual([
      'recorded',
      'refused malformed',
      'recorded',
      'refused malformed',
      'recorded',
    ]);
    const good = [events[0], events[2], events[4]];
    expect(await send(...good)).toEqual(Array(3).fill('already_recorded'));
  });

  it('leaves nothing half-written behind', async () => {
    const { send, start, say, print, name } = await openFloor();
    const before = await dumpReadTables(database().pool);
    const bad = choking(start, '22003');
    expect(await send(bad)).toEqual(['refused malformed']);
    expect(await dumpReadTables(database().pool)).toEqual(before);
    expect(await send(start('W40'), say.passed('W40', print, { device: name('tab'), deviceSeq: 1 }))).toEqual(
      ['recorded', 'recorded'],
    );
  });
});

describe('a database that fails for a reason of its own', () => {
  it('fails the request whole, and the next one goes on', async () => {
    const { send, mustSend, start } = await openFloor();
    const event = start('W50');
    await expect(send(event, choking(start, '57P01'))).rejects.toThrow(/overflows/);
    expect(await keptOf(event.id)).toEqual({ recorded: 0, refusals: [] });
    await mustSend(event);
  });

  it('that ends the connection in the middle is asked again by the sender, and nothing comes twice', async () => {
    const { send, start } = await openFloor();
    const events = Array.from({ length: 200 }, (_, index) => start(`W-c${index}`));
    const sending = send(...events).then(
      () => 'answered',
      () => 'failed',
    );
    await owner.query(
      `select pg_terminate_backend(pid) from pg_stat_activity
       where datname = current_database() and pid <> pg_backend_pid()`,
    );
    expect(['answered', 'failed']).toContain(await sending);
    const answers = await send(...events);
    expect(new Set(answers).size).toBe(1);
    expect(['recorded', 'already_recorded']).toContain(answers[0]);
    const { rows } = await owner.query(
      `select count(*) as n, count(distinct id) as ids from log.event where unit like 'W-c%'`,
    );
    expect(rows[0]).toEqual({ n: '200', ids: '200' });
  });
});
