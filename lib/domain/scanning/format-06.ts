import { EOT, GS, RS } from '@/lib/domain/scanning/control-characters';

/** What was not as it should be, and could be read all the same. */
export type LabelWarning =
  | 'malformed_header'
  | 'missing_envelope'
  | 'separator_lost'
  | `repeated_di:${string}`;

/** A label of ISO/IEC 15434 format 06: the values of each ANSI MH10.8.2 data identifier, in their order. */
export type DataFields = { fields: Map<string, string[]>; warnings: LabelWarning[] };

const HEADER = '[)>';
// A data identifier is a letter behind up to three digits: whoever takes the digits first takes the longest.
const FIELD = /^([0-9]{0,3}[A-Z])(.+)$/s;
// Data identifiers of ANSI MH10.8.2 that electronics labels carry; only they prove a label that has lost its envelope.
const KNOWN = new Set('P 1P 30P Q 1T S 3S V 1V K 4K 9D 10D 12D 14D 4L 13E'.split(' '));

/** Reads a format 06 label, or null when the text is none. */
export function readFormat06(payload: string): DataFields | null {
  const start = payload.indexOf(HEADER);
  if (start < 0) return readWithoutEnvelope(payload);
  const records = recordsOf(payload.slice(start + HEADER.length));
  const isWellFormed = payload.startsWith(`${HEADER}${RS}06${GS}`);
  const texts = records.flatMap((record) => (record.startsWith('06') ? [record.slice(2)] : []));
  if (texts.length === 0) return null;
  return collect(
    texts.flatMap((text) => text.split(GS)),
    isWellFormed ? [] : ['malformed_header'],
  );
}

/** Whether a text has the header of a format 06 label but no separator at all: nothing in it can be told apart. */
export function hasLostAllSeparators(payload: string): boolean {
  return payload.includes(HEADER) && !payload.includes(GS);
}

function readWithoutEnvelope(payload: string): DataFields | null {
  if (!payload.includes(GS) && !payload.includes(RS)) return null;
  const texts = recordsOf(payload).flatMap((record) => record.split(GS));
  const isLabel = texts.length > 0 && texts.every((text) => KNOWN.has(FIELD.exec(text)?.[1] ?? ''));
  return isLabel ? collect(texts, ['missing_envelope']) : null;
}

function recordsOf(text: string): string[] {
  const [message = ''] = text.split(EOT);
  return message.split(RS).filter((record) => record !== '');
}

function collect(texts: readonly string[], warnings: LabelWarning[]): DataFields {
  const fields = new Map<string, string[]>();
  for (const text of texts) {
    const [, di, value] = FIELD.exec(text) ?? [];
    if (di === undefined || value === undefined) continue;
    const values = fields.get(di) ?? [];
    values.push(value);
    fields.set(di, values);
  }
  for (const [di, values] of fields) if (values.length > 1) warnings.push(`repeated_di:${di}`);
  return { fields, warnings };
}
