import { z } from 'zod';
import { scanCommand } from '@/lib/domain/station/scan-command';
import { type ResumedWork, type Session, unitInTask } from '@/lib/domain/station/session/session';

const readingSchema = z.object({
  name: z.string(),
  unit: z.string().nullable(),
  low: z.number().nullable(),
  high: z.number().nullable(),
});
const resumedSchema = z.object({
  startedAt: z.string(),
  defects: z.array(z.object({ code: z.string(), position: z.string().nullable() })),
  note: z.string(),
  readings: z.array(readingSchema.extend({ text: z.string() })).default([]),
  isFailing: z.boolean(),
});
const keptSchema = z.object({
  unit: z.string().nullable(),
  resumed: resumedSchema.nullable(),
  waiting: z.array(z.string()),
});
/** What a reload of the tab must not lose. */
export type KeptSession = z.infer<typeof keptSchema>;

const lotsSchema = z.object({
  lots: z.array(z.object({ product: z.string(), revision: z.string(), part: z.string(), item: z.string() })),
  readings: z.array(readingSchema.extend({ product: z.string(), revision: z.string() })).default([]),
  order: z.string(),
  boardLot: z.string(),
});
/** What a tablet remembers of a station's material. */
export type KeptLots = z.infer<typeof lotsSchema>;

const sessionKey = (station: string) => `reelkin.session.${station}`;
const lotsKey = (station: string) => `reelkin.lots.${station}`;

/** Keeps the unit in work for this tab, and the lots for this device. */
export function keepSession(station: string, session: Session): void {
  const { lots, readings, order, boardLot } = session;
  const kept: KeptSession = {
    unit: unitInTask(session.task),
    resumed: resumedOf(session),
    waiting: [...session.waiting, ...session.held.filter((code) => scanCommand(code) === null)],
  };
  write(sessionStorage, sessionKey(station), kept);
  write(localStorage, lotsKey(station), { lots, readings, order, boardLot } satisfies KeptLots);
}

/** To look is cheaper than to write, and most scans change nothing that is kept. */
function write(storage: Storage, key: string, value: object): void {
  const text = JSON.stringify(value);
  if (storage.getItem(key) !== text) storage.setItem(key, text);
}

/** What was kept of the session of a station in this tab, or null. */
export function keptSession(station: string): KeptSession | null {
  return parse(keptSchema, sessionStorage.getItem(sessionKey(station)));
}

/** The lots that this device remembers for a station, or null. */
export function keptLots(station: string): KeptLots | null {
  return parse(lotsSchema, localStorage.getItem(lotsKey(station)));
}

function parse<T extends z.ZodType>(schema: T, text: string | null): z.output<T> | null {
  if (text === null) return null;
  try {
    return schema.safeParse(JSON.parse(text)).data ?? null;
  } catch {
    return null;
  }
}

function resumedOf({ task }: Session): ResumedWork | null {
  if (task.step === 'asking' || task.step === 'unanswered') return task.resumed;
  if (!('work' in task) || task.step === 'repeat') return null;
  const { startedAt, defects, note, readings } = task.work;
  const isFailing = task.step === 'defect' || task.step === 'position' || task.step === 'confirming';
  return { startedAt, defects, note, readings, isFailing };
}
