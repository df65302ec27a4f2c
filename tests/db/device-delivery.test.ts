import { describe, expect, test } from 'vitest';
import type { WireEvent } from '@/lib/domain/events/catalogue';
import type { PersonPrincipal } from '@/lib/domain/people/principal';
import { appendEvents, type EventResult } from '@/lib/server/append-events';
import { database } from '@/lib/server/database';
import { sealPass } from '@/lib/server/people/delivery-pass';
import { databaseWithPeople } from '@/tests/support/database-with-people';
import { openFloor } from '@/tests/support/gate-floor';

databaseWithPeople();

const packer: PersonPrincipal = { kind: 'person', badge: 'test-packer', role: 'packer' };

function told({ outcome, refusal, flags = [] }: EventResult): string {
  return [outcome, refusal?.code, ...flags.map(({ code }) => code)].filter(Boolean).join(' ');
}

async function deliver(
  events: readonly WireEvent[],
  options: { isNumberOnce?: boolean; passes?: string[] } = {},
): Promise<string[]> {
  return (await appendEvents(events, packer, options)).map(told);
}

describe('a device that delivers what somebody else has done', () => {
  test('is judged by the rights of the one who did it, when their pass shows that they signed in there', async () => {
    const { start, say, print } = await openFloor();
    const late = { gate: 'record', operator: 'test-operator' } as const;
    const started = { ...start('W-1'), ...late };
    expect(await deliver([started])).toEqual(['refused not_permitted']);
    const passes = [await sealPass('test-operator')];
    expect(await deliver([started], { passes })).toEqual(['recorded unknown_operator']);
    const passed = say.passed('W-1', print, late);
    expect(await deliver([passed], { passes: ['forged', await sealPass('nobody')] })).toEqual([
      'refused not_permitted',
    ]);
    expect(await deliver([passed], { passes })).toEqual(['recorded unknown_operator']);
  });

  test('keeps a fact that its doer may not tell, flagged; a decision without the right to it is none', async () => {
    const { say } = await openFloor();
    const floorUnit = 'W-2';
    const late = { gate: 'record', operator: 'test-operator' } as const;
    const passes = [await sealPass('test-operator')];
    const [packed, signed] = [say.packed(floorUnit, 'CT-2', late), say.signed(floorUnit, late)];
    const [first, second] = await deliver([packed, signed], { passes });
    expect(first).toMatch(/^recorded not_permitted /);
    expect(second).toBe('refused not_permitted');
  });

  test('keeps a fact that nobody vouches for, flagged, where the sender may tell such facts', async () => {
    const { say } = await openFloor();
    const [packed] = await deliver([say.packed('W-3', 'CT-3', { gate: 'record', operator: 'test-admin' })]);
    expect(packed).toMatch(/^recorded not_vouched /);
    const { rows } = await database().pool.query(`select flags from read.flagged where unit = 'W-3'`);
    expect(JSON.stringify(rows)).toContain('not_vouched');
  });
});

describe('a number of a device that gives each once', () => {
  test('belongs to one event: recorded, refused or beside it; its own retry is no other event', async () => {
    const { say, reel } = await openFloor();
    const numbered = (device: string, deviceSeq: number) =>
      say.packed('W-none', 'CT-4', { device, deviceSeq });
    const token = async (...events: WireEvent[]) =>
      (await appendEvents(events, { kind: 'token' }, { isNumberOnce: true })).map(told);
    const first = { ...say.counted(reel), device: 'tab-a', deviceSeq: 1 };
    const refused = numbered('tab-a', 2);
    expect(await token(first, refused)).toEqual(['recorded', 'refused unknown_unit']);
    expect(await token(first, refused)).toEqual(['already_recorded', 'refused unknown_unit']);
    expect(await token(numbered('tab-a', 1), numbered('tab-a', 2))).toEqual([
      'refused device_seq_reused',
      'refused device_seq_reused',
    ]);
    const twin = { ...say.counted(reel), device: 'tab-a', deviceSeq: 3 };
    expect(await token({ ...say.counted(reel), device: 'tab-a', deviceSeq: 3 }, twin)).toEqual([
      'recorded',
      'refused device_seq_reused',
    ]);
    expect(await token({ ...twin, device: 'tab-b', deviceSeq: 1 })).toEqual(['recorded']);
  });

  test('does not count as arrived twice, and a sender that does not ask is taken as before', async () => {
    const { say, reel } = await openFloor();
    const event = () => ({ ...say.counted(reel), device: 'tab-c', deviceSeq: 1 });
    const send = async (isNumberOnce: boolean) =>
      (await appendEvents([event()], { kind: 'token' }, { isNumberOnce })).map(told);
    expect(await send(false)).toEqual(['recorded']);
    expect(await send(false)).toEqual(['recorded']);
    expect(await send(true)).toEqual(['refused device_seq_reused']);
  });
});
