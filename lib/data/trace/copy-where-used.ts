import type { Readable } from 'node:stream';
import pg from 'pg';
import { to as copyTo } from 'pg-copy-streams';
import { prepareWhereUsed } from '@/lib/data/trace/prepare-where-used';
import { bitOf } from '@/lib/data/trace/slot-doubt';
import type { Statement } from '@/lib/data/trace/where-used-sql';
import { DOUBTS } from '@/lib/domain/genealogy/answer';
import type { WhereUsedQuestion } from '@/lib/domain/genealogy/question';

// What a spreadsheet takes for the beginning of a formula: = + - @, tab, carriage return, and the wide forms of the first four.
const FORMULA_BEGINNINGS = [61, 43, 45, 64, 9, 13, 65_309, 65_291, 65_293, 65_312].join(', ');
const because = DOUBTS.map((doubt) => `case when b.bits & ${bitOf(doubt)} > 0 then '${doubt}' end`);

/** The cells of a row of `answer`, in the order of the file's columns. */
const CELLS = [
  safe('a.unit'),
  safe('a.product'),
  safe('a.revision'),
  'a.certainty',
  `case when a.certainty = 'possible' then concat_ws(' ', ${because.join(', ')}) end`,
  'a.relation',
  'a.place',
  `case when a.place = 'station' then ${safe('a.station')} end`,
  `case when a.place in ('container', 'shipped') then ${safe('a.container')} end`,
  `case when a.place = 'shipped' then ${safe('a.shipment')} end`,
  `case when a.place = 'shipped' then ${safe('a.customer')} end`,
  safe(`nullif(array_to_string(a.through, ' > '), '')`),
];

/**
 * Every unit of an answer, sorted, as lines of CSV that PostgreSQL itself writes, ended by a line feed each; `last` is
 * one more cell of every line. PostgreSQL keeps the answer, the server no more than what is on its way. A stream that is
 * destroyed before its end ends its connection, and with it the statement.
 */
export async function copyWhereUsed(
  pool: pg.Pool,
  question: WhereUsedQuestion,
  last: string,
): Promise<Readable> {
  const statement = inlined(await prepareWhereUsed(pool, question));
  const cells = [...CELLS, pg.escapeLiteral(last)].join(', ');
  const client = await pool.connect();
  const lines = client.query(
    copyTo(`copy (
      ${statement}
      select ${cells} from answer a
      cross join lateral (select case a.doubt when 0 then ${bitOf('clock')} else a.doubt end as bits) b
      order by a.unit) to stdout with (format csv)`),
  );
  let isDone = false;
  // Whoever reads learns of a failure by reading; without a listener it would end the process.
  lines.on('error', () => undefined);
  lines.once('end', () => {
    isDone = true;
  });
  lines.once('close', () => client.release(!isDone));
  return lines;
}

/** COPY takes no parameters: the values as literals, in the places of the parameters. */
function inlined({ text, values }: Statement): string {
  return text.replace(/\$(\d+)/g, (_, number) => literalOf(values[Number(number) - 1]));
}

function literalOf(value: unknown): string {
  if (value === null || value === undefined) return 'null';
  if (Array.isArray(value)) return `array[${value.map(literalOf).join(', ')}]`;
  return pg.escapeLiteral(String(value));
}

/** A cell that would be taken for a formula is preceded by an apostrophe. */
function safe(cell: string): string {
  return `case when ascii(${cell}) in (${FORMULA_BEGINNINGS}) then '''' || ${cell} else ${cell} end`;
}
