import { Readable } from 'node:stream';
import { stringify } from 'csv-stringify/sync';
import { findCompleteness } from '@/lib/data/trace/find-completeness';
import { streamWhereUsed } from '@/lib/data/trace/stream-where-used';
import { findWhereUsed } from '@/lib/data/trace/where-used';
import type { Completeness, UsedUnit } from '@/lib/domain/genealogy/answer';
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
  const { completeness, rows } = isAboutMoment(question)
    ? await readWhole(question)
    : await openStream(question);
  const isComplete = completeness.complete ? 'yes' : 'no';
  // The first page is read before the answer begins: a failing question is a problem document, not half a file.
  const first = await rows.next();
  const columns = [
    ...COLUMNS.map((key) => ({ key, header: key })),
    { key: 'isComplete', header: completenessText(completeness) },
  ];
  // Page by page: a stream that takes row by row spends most of its time on handing them over.
  const pageOf = (units: readonly UsedUnit[], header: boolean) =>
    Buffer.from(
      stringify(
        units.map((unit) => ({ ...toCells(unit), isComplete })),
        { ...FORMAT, columns, header },
      ),
    );
  const source = Readable.from(pagesFrom(first.done === true ? [] : first.value, rows, pageOf), {
    objectMode: false,
  });
  // Whatever ends the file, the statement ends too: a reader who leaves early would keep its connection otherwise. A
  // failure cuts the file: it is never a short one that looks whole.
  source.once('close', () => void rows.return(undefined));
  return Readable.toWeb(source) as ReadableStream;
}

const FORMAT = { escape_formulas: true, record_delimiter: '\r\n' } as const;

async function* pagesFrom(
  first: readonly UsedUnit[],
  rest: AsyncIterable<UsedUnit[]>,
  pageOf: (units: readonly UsedUnit[], header: boolean) => Buffer,
) {
  yield pageOf(first, true);
  for await (const page of rest) yield pageOf(page, false);
}

type Opened = { completeness: Completeness; rows: AsyncGenerator<UsedUnit[]> };

async function openStream(question: WhereUsedQuestion): Promise<Opened> {
  const completeness = await findCompleteness(database().pool);
  return { completeness, rows: streamWhereUsed(database().streaming, question) };
}

/** Every unit of an answer about a moment: its record lives as long as its transaction, so it is read whole. */
function readWhole(question: WhereUsedQuestion): Promise<Opened> {
  return onRecordOf(question, async (db) => {
    const completeness = await findCompleteness(db, question.knownAt);
    const units: UsedUnit[] = [];
    for (let cursor: string | null | undefined; cursor !== null; ) {
      const page = await findWhereUsed(db, { ...question, limit: PAGE_MAX, cursor });
      for (const unit of page.units) units.push(unit);
      cursor = page.next;
    }
    return { completeness, rows: onePage(units) };
  });
}

async function* onePage(units: UsedUnit[]): AsyncGenerator<UsedUnit[]> {
  yield units;
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
