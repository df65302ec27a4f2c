import { pipeline, Readable } from 'node:stream';
import { stringify } from 'csv-stringify';
import type { CausingEvent, Change, Difference } from '@/lib/domain/genealogy/difference';
import { completenessText } from '@/lib/server/completeness-text';

const COLUMNS = [
  'unit',
  'change',
  'before',
  'beforeRelation',
  'after',
  'afterRelation',
  'event',
  'type',
  'happenedAt',
  'arrivedAt',
  'station',
  'operator',
  'device',
  'broughtBy',
  'amongEvents',
  'isRefused',
] as const;

/**
 * Every change of an answer as CSV (RFC 4180 with a header), sorted by unit, with the event that did it; the last column
 * is the answer's completeness. A cell that a spreadsheet would take for a formula is preceded by an apostrophe.
 */
export function differenceCsv({ changes, events, ...answer }: Difference): ReadableStream {
  const isComplete = answer.complete ? 'yes' : 'no';
  const byId = new Map(events.map((cause) => [cause.event.id, cause]));
  const csv = stringify({
    header: true,
    columns: [
      ...COLUMNS.map((key) => ({ key, header: key })),
      { key: 'isComplete', header: headingOf(answer) },
    ],
    escape_formulas: true,
    record_delimiter: '\r\n',
  });
  const source = Readable.from(changes.map((change) => ({ ...toCells(change, byId), isComplete })));
  // A failure on either side ends both: the reader sees a file that was cut, never a short one that looks whole.
  pipeline(source, csv, () => undefined);
  return Readable.toWeb(csv) as ReadableStream;
}

/** The completeness, and what the comparison had to leave out. */
function headingOf(answer: Omit<Difference, 'changes' | 'events'>): string {
  const completeness = completenessText(answer);
  return answer.leavesOut ? `${completeness}; what counts say is left out` : completeness;
}

function toCells({ unit, kind, before, after, by }: Change, byId: ReadonlyMap<string, CausingEvent>) {
  const cause = 'event' in by ? byId.get(by.event) : undefined;
  return {
    unit,
    change: kind,
    before: before?.certainty ?? null,
    beforeRelation: before?.relation ?? null,
    after: after?.certainty ?? null,
    afterRelation: after?.relation ?? null,
    event: cause?.event.id ?? null,
    type: cause?.event.type ?? null,
    happenedAt: cause?.event.at ?? null,
    arrivedAt: cause?.recordedAt ?? null,
    station: cause?.event.station ?? null,
    operator: cause?.event.operator ?? null,
    device: cause?.event.device ?? null,
    broughtBy: cause?.recordedBy ?? null,
    amongEvents: 'among' in by ? by.among : null,
    isRefused: cause === undefined ? null : cause.isRefused ? 'yes' : 'no',
  };
}
