import { v7 } from 'uuid';
import { z } from 'zod';
import { codeSchema } from '@/lib/domain/codes';
import type { Refusal } from '@/lib/domain/gate/refusals';
import { batchMoment, holdIdInBatch } from '@/lib/domain/holds/hold-batch';
import type { PersonPrincipal } from '@/lib/domain/people/principal';
import { formatInstant } from '@/lib/domain/time';
import { appendEvents } from '@/lib/server/append-events';
import { readPlant } from '@/lib/server/read-plant';

/** Units held with one call; a longer batch comes in several, so that whoever waits sees it go on. */
export const HOLD_CALL_MAX = 100;

const requestSchema = z.strictObject({
  batch: z.uuid({ version: 'v7' }),
  units: z.array(codeSchema).min(1).max(HOLD_CALL_MAX),
  reason: z.string().trim().min(1).max(2000),
});

/** What became of the units of one call. */
export type HeldUnits = { ok: true; refused: { unit: string; refusal: Refusal }[] } | { ok: false };

/** A new batch of holds: its UUID v7 gives all of them their moment, and each its id. */
export function newHoldBatch(): string {
  return v7();
}

/** Puts a hold on each of the units; sending the same again changes nothing. `ok: false` is a request that means nothing. */
export async function holdUnits(principal: PersonPrincipal, request: unknown): Promise<HeldUnits> {
  const parsed = requestSchema.safeParse(request);
  if (!parsed.success) return { ok: false };
  const { batch, units, reason } = parsed.data;
  const isOperator = (await readPlant()).operator(principal.badge) !== null;
  const events = units.map((unit) => ({
    id: holdIdInBatch(batch, unit),
    type: 'hold.placed',
    at: formatInstant(batchMoment(batch) * 1000),
    gate: 'enforce',
    ...(isOperator && { operator: principal.badge }),
    body: { target: { kind: 'unit', id: unit }, reason },
  }));
  const results = await appendEvents(events, principal);
  return {
    ok: true,
    refused: results.flatMap(({ refusal }, index) =>
      refusal === undefined ? [] : [{ unit: units[index] ?? '', refusal }],
    ),
  };
}
