import { once } from 'node:events';
import { Readable } from 'node:stream';
import { stringify } from 'csv-stringify/sync';
import { copyWhereUsed } from '@/lib/data/trace/copy-where-used';
import { findCompleteness } from '@/lib/data/trace/find-completeness';
import { findWhereUsed } from '@/lib/data/trace/where-used';
import type { Completeness, UsedUnit } from '@/lib/domain/genealogy/answer';
import { PAGE_MAX, type WhereUsedQuestion } from '@/lib/domain/genealogy/question';
import { completenessText } from '@/lib/server/completeness-text';
import { database } from '@/lib/server/database';
import { endLines } from '@/lib/server/end-lines';
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

const FORMAT = { escape_formulas: true, record_delimiter: '\r\n' } as const;

/**
 * The whole answer as CSV (RFC 4180 with a header), streamed from the database as it is read. A cell that a
 * spreadsheet would take for a formula is preceded by an apostrophe. The last column is the answer's completeness, told
 * as of just before the rows are read: what arrives meanwhile cannot make an incomplete answer look complete.
 */
export async function whereUsedCsv(question: WhereUsedQuestion): Promise<ReadableStream> {
  const source = isAboutMoment(question) ? await ofMoment(question) : await ofNow(question);
  return Readable.toWeb(source) as ReadableStream;
}

async function ofNow(question: WhereUsedQuestion): Promise<Readable> {
  const completeness = await findCompleteness(database().pool);
  const lines = await copyWhereUsed(database().streaming, question, isComplete(completeness));
  // Some of it is there before the answer begins: a failing question is a problem document, not half a file.
  await once(lines, 'readable');
  const source = Readable.from(withHeader(completeness, lines), { objectMode: false });
  // Whatever ends the file, the statement ends too: a reader who leaves early would keep its connection otherwise. A
  // failure cuts the file: it is never a short one that looks whole.
  source.once('close', () => lines.destroy());
  return source;
}

async function* withHeader(completeness: Completeness, lines: Readable) {
  yield headerOf(completeness);
  yield* endLines(lines);
}

/** Every unit of an answer about a moment: its record lives as long as its transaction, so it is read whole. */
async function ofMoment(question: WhereUsedQuestion): Promise<Readable> {
  return await onRecordOf(question, async (db) => {
    const completeness = await findCompleteness(db, question.knownAt);
    const pages = [headerOf(completeness)];
    for (let cursor: string | null | undefined; cursor !== null; ) {
      const page = await findWhereUsed(db, { ...question, limit: PAGE_MAX, cursor });
      const rows = page.units.map((unit) => [...toCells(unit), isComplete(completeness)]);
      pages.push(Buffer.from(stringify(rows, FORMAT)));
      cursor = page.next;
    }
    return Readable.from(pages, { objectMode: false });
  });
}

function isComplete({ complete }: Completeness): string {
  return complete ? 'yes' : 'no';
}

function headerOf(completeness: Completeness): Buffer {
  return Buffer.from(stringify([[...COLUMNS, completenessText(completeness)]], FORMAT));
}

function toCells(used: UsedUnit): (string | null)[] {
  const { unit, product, revision, certainty, because, relation, place, through } = used;
  return [
    unit,
    product,
    revision,
    certainty,
    because?.join(' ') ?? null,
    relation,
    place?.kind ?? null,
    place?.kind === 'station' ? place.station : null,
    place !== null && 'container' in place ? place.container : null,
    place?.kind === 'shipped' ? place.shipment : null,
    place?.kind === 'shipped' ? place.customer : null,
    through.join(' > '),
  ];
}
