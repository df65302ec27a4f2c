import { z } from 'zod';
import { roleSchema } from '@/lib/domain/people/roles';
import type { Present } from '@/lib/offline/kept-people';

const KEY = 'reelkin.present';
/** A long shift, like a session of the server. */
const PRESENT_MS = 12 * 3600_000;

const presentSchema = z.object({
  person: z.object({ kind: z.literal('person'), badge: z.string(), role: roleSchema }),
  name: z.string().nullable(),
  isChecked: z.boolean(),
  sinceMs: z.number(),
});

/** Keeps who is at this device, so that its screens open without the server too. */
export function keepPresent(present: Present): void {
  const before = read();
  const isSame = before?.person.badge === present.person.badge && before.isChecked === present.isChecked;
  localStorage.setItem(KEY, JSON.stringify({ ...present, sinceMs: isSame ? before.sinceMs : Date.now() }));
}

/** Who is at this device, or null when nobody is any more. */
export function presentPerson(): Present | null {
  const kept = read();
  return kept === null || Date.now() - kept.sinceMs > PRESENT_MS ? null : kept;
}

/** Nobody is at this device any more. */
export function forgetPresent(): void {
  localStorage.removeItem(KEY);
}

function read(): z.infer<typeof presentSchema> | null {
  try {
    return presentSchema.safeParse(JSON.parse(localStorage.getItem(KEY) ?? 'null')).data ?? null;
  } catch {
    return null;
  }
}
