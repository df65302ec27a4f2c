import { z } from 'zod';
import { findEventsById, findReleases } from '@/lib/data/log/find-events';
import type { Queryable } from '@/lib/data/pool';
import type { LoggedEvent } from '@/lib/domain/events/logged-event';
import { subjectUnit } from '@/lib/domain/events/logged-event';
import { formatInstant } from '@/lib/domain/time';
import { unitStateSchema } from '@/lib/domain/units/unit-state';

type Placement = { kind: string; target: string; reason: string; isAutomatic: boolean };

/** Reason of a hold that a failing result placed by using up the attempts of its step. */
export const ATTEMPTS_REASON = 'attempts_exhausted';

/**
 * Makes a hold again from the event that bears its id: a `hold.placed`, an event recorded against a rule, or a
 * failing result that used up the attempts of its step. Without any of these there is no hold.
 */
export async function refreshHold(db: Queryable, hold: string): Promise<void> {
  const [event] = await findEventsById(db, [hold]);
  const placement = event === undefined ? null : await placementBy(db, event);
  await db.query('delete from read.hold where hold = $1', [hold]);
  if (event === undefined || placement === null) return;
  const [release] = await findReleases(db, hold);
  const disposition = release?.type === 'hold.released' ? release.body.disposition : null;
  await db.query(
    `insert into read.hold (hold, target_kind, target, reason, is_automatic, placed_at, released_at, released_by,
       disposition)
     values ($1, $2, $3, $4, $5, $6, $7, $8, $9)`,
    [
      hold,
      placement.kind,
      placement.target,
      placement.reason,
      placement.isAutomatic,
      formatInstant(event.atUs),
      release === undefined ? 'infinity' : formatInstant(release.atUs),
      release?.id ?? null,
      disposition,
    ],
  );
}

const flagRowSchema = z.object({ flags: z.array(z.object({ code: z.string() })) });
const stateRowSchema = z.object({ state: unitStateSchema });

async function placementBy(db: Queryable, event: LoggedEvent): Promise<Placement | null> {
  const voided = await db.query('select from read.voided where event = $1', [event.id]);
  if (voided.rowCount !== 0) return null;
  if (event.type === 'hold.placed') {
    const { target, reason } = event.body;
    return { kind: target.kind, target: target.id, reason, isAutomatic: false };
  }
  const unit = subjectUnit(event);
  if (unit === null) return null;
  const flagged = await db.query('select flags from read.flagged where event = $1', [event.id]);
  const codes = flagged.rows.flatMap((row) => flagRowSchema.parse(row).flags.map((flag) => flag.code));
  const states = await db.query('select state from read.unit where unit = $1', [unit]);
  const isExhausted = states.rows.some((row) => stateRowSchema.parse(row).state.exhausted.includes(event.id));
  const reasons = [...new Set([...codes, ...(isExhausted ? [ATTEMPTS_REASON] : [])])];
  return reasons.length === 0
    ? null
    : { kind: 'unit', target: unit, reason: reasons.join(', '), isAutomatic: true };
}
