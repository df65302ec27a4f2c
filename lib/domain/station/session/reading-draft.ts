import type { EventOf } from '@/lib/domain/events/catalogue';
import type { Session, Work } from '@/lib/domain/station/session/session';
import type { StationPicture, UsualReading } from '@/lib/domain/station/station-picture';

/** Something that is measured, and what was typed for it. */
export type ReadingDraft = Omit<UsualReading, 'product' | 'revision'> & { text: string };

/** How a typed value stands to its limits; `unclear` is a text where a number has limits. */
export type ReadingVerdict = 'none' | 'in' | 'below' | 'above' | 'unclear';

/** What is to be measured of the unit in work: what was typed already, what was usual here, in that order of names. */
export function readingsToGive(
  work: Work,
  session: Session,
  { readings }: Pick<StationPicture, 'readings'>,
): ReadingDraft[] {
  const { unit } = work.about;
  const usual = [...readings, ...session.readings].filter(
    ({ product, revision }) => product === unit?.product && revision === unit?.revision,
  );
  const drafts = new Map<string, ReadingDraft>();
  for (const { name, unit: unitOfValue, low, high } of usual)
    if (!drafts.has(name)) drafts.set(name, { name, unit: unitOfValue, low, high, text: '' });
  for (const draft of work.readings) drafts.set(draft.name, draft);
  return [...drafts.values()];
}

const NUMBER = /^[+-]?(\d+([.,]\d*)?|[.,]\d+)$/;

/** A typed value as the event carries it: a number, with a point or a comma, else the text; null while nothing is typed. */
export function readingValue(typed: string): number | string | null {
  const text = typed.trim();
  if (text === '') return null;
  return NUMBER.test(text) ? Number(text.replace(',', '.')) : text;
}

/** How what was typed stands to the limits. */
export function readingVerdict({ text, low, high }: ReadingDraft): ReadingVerdict {
  const value = readingValue(text);
  if (value === null) return 'none';
  if (typeof value === 'string') return low === null && high === null ? 'in' : 'unclear';
  if (low !== null && value < low) return 'below';
  return high !== null && value > high ? 'above' : 'in';
}

/** Whether a typed value speaks against a pass. */
export function isBeyondLimits(readings: readonly ReadingDraft[]): boolean {
  return readings.some((reading) => !['none', 'in'].includes(readingVerdict(reading)));
}

/** The readings with one changed, or added at the end; without a text it stays in the form. */
export function withReading(readings: readonly ReadingDraft[], changed: ReadingDraft): ReadingDraft[] {
  const isThere = readings.some(({ name }) => name === changed.name);
  return isThere
    ? readings.map((each) => (each.name === changed.name ? changed : each))
    : [...readings, changed];
}

/** What the event says of them; those without a value are left out. */
export function readingFacts(
  readings: readonly ReadingDraft[],
): NonNullable<EventOf<'unit.processed'>['body']['readings']> {
  return readings.flatMap(({ name, unit, low, high, text }) => {
    const value = readingValue(text);
    if (value === null) return [];
    return [
      {
        name,
        value,
        ...(unit !== null && { unit }),
        ...(low !== null && { low }),
        ...(high !== null && { high }),
      },
    ];
  });
}

/** Remembers what was measured of a product here, for its next unit while the server has not said it yet. */
export function rememberReadings(session: Session, work: Work): Session {
  const { unit } = work.about;
  const { product = null, revision = null } = unit ?? {};
  if (product === null || revision === null || work.readings.length === 0) return session;
  const given = work.readings.flatMap(({ text, ...reading }) =>
    readingValue(text) === null ? [] : [{ product, revision, ...reading }],
  );
  const others = session.readings.filter(
    (each) =>
      each.product !== product || each.revision !== revision || !given.some(({ name }) => name === each.name),
  );
  return { ...session, readings: [...others, ...given] };
}
