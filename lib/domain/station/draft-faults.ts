import { eventSchema } from '@/lib/domain/events/catalogue';
import { type InputError, inputErrors } from '@/lib/domain/input-errors';
import type { EventDraft } from '@/lib/domain/station/event-draft';

/** Faults of a form by the name of its field: the fault's code. */
export type FieldFaults = Readonly<Record<string, string>>;

/** Stands where the device will put the real ones. */
const STAMP = { id: '018f0000-0000-7000-8000-000000000000', at: '2000-01-01T00:00:00.000Z' };

/** Reads what a form says as an event that is not recorded yet, by the event's own schema; else the faults by field. */
export function readDraft(
  input: object,
): { ok: true; draft: EventDraft } | { ok: false; faults: FieldFaults } {
  const parsed = eventSchema.safeParse({ ...input, ...STAMP });
  if (!parsed.success) return { ok: false, faults: faultsByField(inputErrors(parsed.error)) };
  const { id: _id, at: _at, ...draft } = parsed.data;
  return { ok: true, draft };
}

/** The first fault of each field below `/body`; a fault elsewhere has the field ''. */
export function faultsByField(errors: readonly InputError[]): FieldFaults {
  const faults: Record<string, string> = {};
  for (const { pointer, code } of errors) {
    const field = /^\/body\/(.+)/.exec(pointer)?.[1] ?? '';
    faults[field] ??= code;
  }
  return faults;
}
