import { v7 } from 'uuid';
import { z } from 'zod';
import { findHeldFor } from '@/lib/data/holds/find-held-for';
import { codeSchema, statementSchema } from '@/lib/domain/codes';
import type { Refusal } from '@/lib/domain/gate/refusals';
import { batchMoment, HOLD_CALL_MAX, holdIdInBatch } from '@/lib/domain/holds/hold-batch';
import type { PersonPrincipal } from '@/lib/domain/people/principal';
import { formatInstant } from '@/lib/domain/time';
import { database } from '@/lib/server/database';
import { recordManyAtDesk } from '@/lib/server/record-at-desk';

const requestSchema = z.strictObject({
  batch: z.uuid({ version: 'v7' }),
  units: z.array(codeSchema).min(1).max(HOLD_CALL_MAX),
  reason: z.string().trim().pipe(statementSchema),
});

/** What became of the units of one call: `already` of them an open hold of the same reason stopped before. */
export type HeldUnits =
  | { ok: true; already: number; refused: { unit: string; refusals: Refusal[] }[] }
  | { ok: false };

/** A new batch of holds: its UUID v7 gives all of them their moment, and each its id. */
export function newHoldBatch(): string {
  return v7();
}

/**
 * Puts a hold on each of the units that no open hold of the same reason stops yet; sending the same again, or the same
 * units in another batch, changes nothing, but that two people at the same instant may each place one. `ok: false` is a request that means nothing.
 */
export async function holdUnits(principal: PersonPrincipal, request: unknown): Promise<HeldUnits> {
  const parsed = requestSchema.safeParse(request);
  if (!parsed.success) return { ok: false };
  const { batch, reason } = parsed.data;
  const units = [...new Set(parsed.data.units)];
  // A hold of this batch is no other hold: the log itself knows it by its id when it is sent again.
  const except = units.map((unit) => holdIdInBatch(batch, unit));
  const held = await findHeldFor(database().pool, { units, reason, except });
  const wanted = units.filter((unit) => !held.has(unit));
  const drafts = wanted.map((unit) => ({
    id: holdIdInBatch(batch, unit),
    type: 'hold.placed',
    body: { target: { kind: 'unit', id: unit }, reason },
  }));
  const results = await recordManyAtDesk(principal, formatInstant(batchMoment(batch) * 1000), drafts);
  return {
    ok: true,
    already: held.size,
    refused: results.flatMap((result, index) =>
      result.ok ? [] : [{ unit: wanted[index] ?? '', refusals: result.refusals }],
    ),
  };
}
