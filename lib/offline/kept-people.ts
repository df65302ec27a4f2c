import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import { z } from 'zod';
import { afterTry, checkBits, OFFLINE_SIGN_IN_MS } from '@/lib/domain/people/offline-check';
import type { PersonPrincipal } from '@/lib/domain/people/principal';
import { roleSchema } from '@/lib/domain/people/roles';
import { readApi } from '@/lib/offline/read-api';

const checkSchema = z.object({ salt: z.string(), bits: z.int() });
const keptSchema = z.object({
  badge: z.string(),
  role: roleSchema,
  name: z.string().nullable(),
  /** The server's word that this person has signed in on this device. */
  pass: z.string().nullable(),
  check: checkSchema.nullable(),
  signedInMs: z.number(),
  wrongCount: z.int(),
  waitUntilMs: z.number(),
});
type KeptPerson = z.infer<typeof keptSchema>;

type Schema = DBSchema & {
  person: { key: string; value: unknown };
  key: { key: string; value: unknown };
};

/** Who is at this device, and whether the server has seen the PIN. */
export type Present = { person: PersonPrincipal; name: string | null; isChecked: boolean };

/** What became of a sign-in without the server. */
export type OfflineSignIn =
  | { ok: true; present: Present }
  | { ok: false; why: 'unknown_here' | 'wrong_pin' }
  | { ok: false; why: 'wait'; untilMs: number };

const passSchema = z.object({ badge: z.string(), pass: z.string() });
const PENDING = 'reelkin.badge-check';
const pendingSchema = checkSchema.extend({ badge: z.string() });

/**
 * Notes a PIN that is on its way to the server, as the few bits that will be kept if the server says that it is right.
 * Six bits stop 63 of 64 wrong PINs; whoever takes the device apart and tries all PINs is left with one in 64 of them,
 * and so has no PIN.
 */
export async function notePin(badge: string, pin: string): Promise<void> {
  const salt = crypto.randomUUID();
  const bits = await bitsOf(await open(), { badge, pin, salt });
  sessionStorage.setItem(PENDING, JSON.stringify({ badge, salt, bits }));
}

/** Keeps who has signed in with the server, with the check of their PIN and a pass to deliver what they do. */
export async function keepPerson(person: PersonPrincipal, name: string | null): Promise<void> {
  const db = await open();
  const pending = readPending();
  const answer = await readApi('/api/pass', passSchema, {});
  const before = await find(db, person.badge);
  const check = pending?.badge === person.badge ? { salt: pending.salt, bits: pending.bits } : null;
  sessionStorage.removeItem(PENDING);
  const kept: KeptPerson = {
    badge: person.badge,
    role: person.role,
    name,
    pass: answer.ok && answer.data.badge === person.badge ? answer.data.pass : (before?.pass ?? null),
    check: check ?? before?.check ?? null,
    signedInMs: Date.now(),
    wrongCount: 0,
    waitUntilMs: 0,
  };
  await db.put('person', kept, person.badge);
}

/** Lets a person in who has signed in here with the server lately. */
export async function signInOffline(badge: string, pin: string): Promise<OfflineSignIn> {
  const db = await open();
  const kept = await find(db, badge);
  const now = Date.now();
  if (kept === null || kept.check === null || now - kept.signedInMs > OFFLINE_SIGN_IN_MS)
    return { ok: false, why: 'unknown_here' };
  if (now < kept.waitUntilMs) return { ok: false, why: 'wait', untilMs: kept.waitUntilMs };
  const isRight = (await bitsOf(db, { badge, pin, salt: kept.check.salt })) === kept.check.bits;
  const tries = afterTry(kept, isRight, now);
  await db.put('person', { ...kept, ...tries }, badge);
  if (!isRight)
    return tries.waitUntilMs > 0
      ? { ok: false, why: 'wait', untilMs: tries.waitUntilMs }
      : { ok: false, why: 'wrong_pin' };
  const person: PersonPrincipal = { kind: 'person', badge, role: kept.role };
  return { ok: true, present: { person, name: kept.name, isChecked: false } };
}

/** The passes of people who have signed in here. */
export async function passesOf(badges: readonly string[]): Promise<string[]> {
  const db = await open();
  const found = await Promise.all(badges.map((badge) => find(db, badge)));
  return found.flatMap((kept) => kept?.pass ?? []);
}

function open(): Promise<IDBPDatabase<Schema>> {
  return openDB<Schema>('reelkin-people', 1, {
    upgrade(fresh) {
      fresh.createObjectStore('person');
      fresh.createObjectStore('key');
    },
  });
}

async function find(db: IDBPDatabase<Schema>, badge: string): Promise<KeptPerson | null> {
  return keptSchema.safeParse(await db.get('person', badge)).data ?? null;
}

async function bitsOf(
  db: IDBPDatabase<Schema>,
  { badge, pin, salt }: { badge: string; pin: string; salt: string },
): Promise<number> {
  const text = new TextEncoder().encode(JSON.stringify([salt, badge, pin]));
  return checkBits(new Uint8Array(await crypto.subtle.sign('HMAC', await deviceKey(db), text)));
}

/** A key that no page can read out, so that the check is of use on this device only. */
async function deviceKey(db: IDBPDatabase<Schema>): Promise<CryptoKey> {
  const kept = await db.get('key', 'hmac');
  if (kept instanceof CryptoKey) return kept;
  const made: unknown = await crypto.subtle.generateKey({ name: 'HMAC', hash: 'SHA-256' }, false, ['sign']);
  if (!(made instanceof CryptoKey)) throw new Error('The browser made no key.');
  await db.put('key', made, 'hmac');
  return made;
}

function readPending(): z.infer<typeof pendingSchema> | null {
  try {
    return pendingSchema.safeParse(JSON.parse(sessionStorage.getItem(PENDING) ?? 'null')).data ?? null;
  } catch {
    return null;
  }
}
