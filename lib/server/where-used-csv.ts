import { pipeline, Readable } from 'node:stream';
import { stringify } from 'csv-stringify';
import { findCompleteness } from '@/lib/data/trace/find-completeness';
import { streamWhereUsed } from '@/lib/data/trace/stream-where-used';
import { findWhereUsed } from '@/lib/data/trace/where-used';
import type { UsedUnit } from '@/lib/domain/genealogy/answer';
import { PAGE_MAX, type WhereUsedQuestion } from '@/lib/domain/genealogy/question';
import { completenessText } from '@/lib/server/completeness-text';
import { database } from '@/lib/server/database';
import { isAboutMoment, onRecordOf } from '@/lib/server/where-used';

const COLUMNS = [
  'unit',
  'product',
  'revision',
  'certainty',
  'because',
  'relation',
  'place',
  'station',
  'container',
  'shipment',
  'customer',
  'through',
] as const;

/**
 * The whole answer as CSV (RFC 4180 with a header), streamed from the database as it is read. A cell that a
 * spreadsheet would take for a formula is preceded by an apostrophe. The last column is the answer's completeness, told
 * as of just before the rows are read: what arrives meanwhile cannot make an incomplete answer look complete.
 */
export async function whereUsedCsv(question: WhereUsedQuestion): Promise<ReadableStream> {
  const completeness = await findCompleteness(database().pool);
  const isComplete = completeness.complete ? 'yes' : 'no';
  const rows = isAboutMoment(question) ? pagesOf(question) : streamWhereUsed(database().streaming, question);
  // The first page is read before the answer begins: a failing question is a problem document, not half a file.
  const first = await rows.next();
  const csv = stringify({
    header: true,
    columns: [
      ...COLUMNS.map((key) => ({ key, header: key })),
      { key: 'isComplete', header: completenessText(completeness) },
    ],
    escape_formulas: true,
    record_delimiter: '\r\n',
  });
  const source = Readable.from(cellsOf(first.done === true ? [] : first.value, rows, isComplete));
  // A failure on either side ends both; the reader then sees a file that was cut, never a short one that looks whole.
  // Whatever ends them, the statement ends too: a reader who leaves early would keep its connection otherwise.
  pipeline(source, csv, () => void rows.return(undefined));
  return Readable.toWeb(csv) as ReadableStream;
}

/** Every unit of an answer about a moment: its record lives as long as its transaction, so it is read whole. */
async function* pagesOf(question: WhereUsedQuestion): AsyncGenerator<UsedUnit[]> {
  yield await onRecordOf(question, async (db) => {
    const units: UsedUnit[] = [];
    for (let cursor: string | null | undefined; cursor !== null; ) {
      const page = await findWhereUsed(db, { ...question, limit: PAGE_MAX, cursor });
      for (const unit of page.units) units.push(unit);
      cursor = page.next;
    }
    return units;
  });
}

async function* cellsOf(first: UsedUnit[], rest: AsyncIterable<UsedUnit[]>, isComplete: 'yes' | 'no') {
  for (const unit of first) yield { ...toCells(unit), isComplete };
  for await (const page of rest) for (const unit of page) yield { ...toCells(unit), isComplete };
}

function toCells({ place, through, because, ...unit }: UsedUnit): Record<string, string | null> {
  const where = {
    place: place?.kind ?? null,
    station: place?.kind === 'station' ? place.station : null,
    container: place !== null && 'container' in place ? place.container : null,
    shipment: place?.kind === 'shipped' ? place.shipment : null,
    customer: place?.kind === 'shipped' ? place.customer : null,
  };
  return { ...unit, ...where, through: through.join(' > '), because: because?.join(' ') ?? null };
}
