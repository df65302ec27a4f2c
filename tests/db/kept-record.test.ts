import { afterAll, describe, expect, it } from 'vitest';
import { APPLICATION_ROLE, openPool } from '@/lib/data/pool';
import { AppendQueue } from '@/lib/data/record/append-queue';
import type { WireEvent } from '@/lib/domain/events/catalogue';
import { toLogged } from '@/lib/domain/events/logged-event';
import { putPlant } from '@/lib/server/put-plant';
import { freshDatabase } from '@/tests/support/fresh-database';
import { openFloor } from '@/tests/support/gate-floor';

const { ownerUrl } = freshDatabase();
let other: ReturnType<typeof openPool> | undefined;
afterAll(async () => {
  await other?.end();
});

/** Another server on the same database, with a record of its own. */
function anotherServer() {
  other ??= openPool({ url: ownerUrl(), role: APPLICATION_ROLE, use: 'writing', connectionCountMax: 1 });
  const queue = new AppendQueue({ pool: other, clock: () => Date.now() * 1000 });
  return async (event: WireEvent): Promise<string | undefined> =>
    (await queue.append([toLogged(event)], 'token'))[0]?.outcome;
}

describe('what a writer keeps between its turns', () => {
  it('is given up when another server has written: a hold that it placed stops the next result', async () => {
    const { mustSend, send, start, say, print, place } = await openFloor();
    const elsewhere = anotherServer();
    await mustSend(start('W-k1'), say.passed('W-k1', print));
    expect(await elsewhere(say.held('unit', 'W-k1'))).toBe('recorded');
    expect(await send(say.passed('W-k1', place))).toEqual(['refused on_hold']);
  });

  it('is given up when an event that it thought new is in the log: each of two servers answers a retry', async () => {
    const { mustSend, send, start } = await openFloor();
    const elsewhere = anotherServer();
    const [first, second] = [start('W-k2'), start('W-k3')];
    await mustSend(first);
    expect(await elsewhere(second)).toBe('recorded');
    expect(await elsewhere(first)).toBe('already_recorded');
    expect(await send(first, second)).toEqual(['already_recorded', 'already_recorded']);
  });

  it('is given up when the plant changes: a new station is known at once', async () => {
    const { mustSend, send, start, say, name } = await openFloor();
    const late = name('LATE');
    await mustSend(start('W-k4'));
    expect(await send(say.passed('W-k4', late))).toEqual([expect.stringContaining('unknown_station')]);
    await putPlant({ stations: [{ code: late, operation: 'print' }] }, 'test');
    const answers = await send(say.passed('W-k4', late));
    expect(answers[0]).not.toContain('unknown_station');
  });

  it('is given up when an event was voided before it came: it has no effect', async () => {
    const { mustSend, send, start, say, check, print } = await openFloor();
    const started = start('W-k5');
    await mustSend(start('W-k6'), say.voided(started.id));
    expect(await send(started)).toEqual(['recorded']);
    expect(await check('W-k5', print)).toContain('unknown_unit');
  });
});
