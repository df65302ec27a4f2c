import { beforeAll, expect, test } from 'vitest';
import { z } from 'zod';
import { POST } from '@/app/api/events/route';
import { EVENT_TYPES, type EventType } from '@/lib/domain/events/catalogue';
import { may } from '@/lib/domain/people/permissions';
import { ROLES } from '@/lib/domain/people/roles';
import { putPlant } from '@/lib/server/put-plant';
import { cookieOfRole, databaseWithPeople, TEST_API_TOKEN } from '@/tests/support/database-with-people';

const database = databaseWithPeople();
const someId = '0198c0de-0000-7000-8000-000000000000';

/** The least that each event type can say. */
const BODIES: Record<EventType, object> = {
  'unit.started': { unit: 'U', product: 'WX4', revision: 'C' },
  'unit.processed': { unit: 'U', result: 'pass' },
  'unit.signed': { unit: 'U', meaning: 'final' },
  'unit.joined': { unit: 'U', into: 'V', position: 'A1' },
  'unit.separated': { unit: 'U', from: 'V' },
  'part.removed': { unit: 'U', position: 'C1' },
  'part.installed': { unit: 'U', position: 'C1', item: 'R' },
  'unit.scrapped': { unit: 'U', reason: 'r' },
  'unit.packed': { unit: 'U', container: 'CT' },
  'unit.unpacked': { unit: 'U', container: 'CT' },
  'container.nested': { container: 'CT', into: 'PL' },
  'container.unnested': { container: 'CT', from: 'PL' },
  'container.shipped': { container: 'CT', shipment: 'SH', customer: 'c' },
  'unit.returned': { unit: 'U' },
  'hold.placed': { target: { kind: 'unit', id: 'U' }, reason: 'r' },
  'hold.released': { hold: someId, disposition: 'use', reason: 'r' },
  'item.received': { item: 'R', kind: 'reel' },
  'item.counted': { item: 'R', quantity: 1, method: 'hand' },
  'item.mounted': { item: 'R', slot: '1' },
  'item.unmounted': { item: 'R', slot: '1' },
  'item.spliced': { from: 'R', to: 'R2', slot: '1' },
  'item.inspected': { item: 'R', result: 'pass' },
  'item.retired': { item: 'R', reason: 'r' },
  'exception.cleared': { event: someId, reason: 'r' },
  'device.retired': { device: 'tab-1', reason: 'r' },
  'label.printed': { target: { kind: 'unit', id: 'U' }, copies: 1 },
  'event.voided': { event: someId, reason: 'r' },
};

const answerSchema = z.object({
  results: z.array(
    z.object({ outcome: z.string(), refusal: z.looseObject({ code: z.string() }).optional() }),
  ),
});

let idCount = 0;
function eventOf(type: EventType) {
  idCount += 1;
  const id = `0198c0de-0000-7000-9000-${String(idCount).padStart(12, '0')}`;
  const at = `2026-03-02T08:${String(idCount % 60).padStart(2, '0')}:00Z`;
  return { id, type, at, station: 'S', gate: 'record', body: BODIES[type] };
}

async function send(headers: Record<string, string>): Promise<(string | undefined)[]> {
  const response = await POST(
    new Request('http://reelkin.test/api/events', {
      method: 'POST',
      headers: { ...headers, 'content-type': 'application/json' },
      body: JSON.stringify({ events: EVENT_TYPES.map(eventOf) }),
    }),
  );
  expect(response.status).toBe(200);
  const { results } = answerSchema.parse(await response.json());
  return results.map(({ outcome, refusal }) => refusal?.code ?? outcome);
}

beforeAll(async () => {
  const slots = [{ name: '1', holds: 'reel' }];
  const put = await putPlant({ stations: [{ code: 'S', operation: 'place', slots }] }, 'test');
  expect(put.ok).toBe(true);
});

test.each(ROLES)(
  '%s appends what the table allows, whatever stands beside it in the request',
  async (role) => {
    const allowed = EVENT_TYPES.filter((type) => may({ kind: 'person', badge: 'p', role }, `event:${type}`));
    const outcomes = await send(await cookieOfRole(role));
    const recorded = EVENT_TYPES.filter((_, index) => outcomes[index] === 'recorded');
    expect(recorded).toEqual(allowed);
    expect(outcomes.filter((outcome) => outcome !== 'recorded')).toEqual(
      Array(EVENT_TYPES.length - allowed.length).fill('not_permitted'),
    );
    const { rows } = await database
      .pool()
      .query('select count(*) as count from log.event where recorded_by = $1', [`test-${role}`]);
    expect(rows).toEqual([{ count: allowed.length }]);
  },
);

test('the token appends everything', async () => {
  const outcomes = await send({ authorization: `Bearer ${TEST_API_TOKEN}` });
  expect(new Set(outcomes)).toEqual(new Set(['recorded']));
});
