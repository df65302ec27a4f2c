import { pipeline, Readable } from 'node:stream';
import { stringify } from 'csv-stringify';
import { openNarrowed } from '@/lib/data/trace/stream-narrowed';
import { conditionText } from '@/lib/domain/genealogy/condition-text';
import type { NarrowedUnit } from '@/lib/domain/genealogy/narrow-answer';
import type { Condition } from '@/lib/domain/genealogy/narrow-question';
import { type Truth, YES } from '@/lib/domain/genealogy/narrowing';
import { completenessText } from '@/lib/server/completeness-text';
import { database } from '@/lib/server/database';

const COLUMNS = [
  'unit',
  'product',
  'revision',
  'certainty',
  'held',
  'place',
  'station',
  'container',
  'shipment',
  'customer',
  'because',
];

/**
 * Every unit that no condition rules out as CSV (RFC 4180 with a header), streamed as it is read. The heading of the
 * file is its question and its completeness: one column a condition, and one that says what is owing or lost.
 */
export async function narrowCsv(conditions: readonly Condition[]): Promise<ReadableStream> {
  const { completeness, pages } = await openNarrowed(database().streaming, conditions);
  // The first page is read before the answer begins: a failing question is a problem document, not half a file.
  const first = await pages.next();
  const columns = [
    ...COLUMNS,
    ...conditions.map((condition, index) => `${index + 1}. ${conditionText(condition)}`),
    completenessText(completeness),
  ];
  const csv = stringify({ header: true, columns, escape_formulas: true, record_delimiter: '\r\n' });
  const source = Readable.from(cellsOf(first.done === true ? [] : first.value, pages, completeness.complete));
  // Whatever ends either side ends the other and the statement: a reader who leaves must not keep its connection.
  pipeline(source, csv, () => void pages.return(undefined));
  return Readable.toWeb(csv) as ReadableStream;
}

type Row = { unit: NarrowedUnit; truths: Truth[] };

async function* cellsOf(first: Row[], rest: AsyncIterable<Row[]>, isComplete: boolean) {
  for (const row of first) yield toCells(row, isComplete);
  for await (const page of rest) for (const row of page) yield toCells(row, isComplete);
}

function toCells({ unit, truths }: Row, isComplete: boolean): (string | null)[] {
  const { place, doubts } = unit;
  return [
    unit.unit,
    unit.product,
    unit.revision,
    unit.certainty,
    unit.isHeld ? 'yes' : 'no',
    place?.kind ?? null,
    place?.kind === 'station' ? place.station : null,
    place !== null && 'container' in place ? place.container : null,
    place?.kind === 'shipped' ? place.shipment : null,
    place?.kind === 'shipped' ? place.customer : null,
    doubts.map(({ condition, because }) => `${condition + 1}: ${because.join(' ')}`).join('; ') || null,
    ...truths.map((truth) => (truth === YES ? 'certain' : 'possible')),
    isComplete ? 'yes' : 'no',
  ];
}
