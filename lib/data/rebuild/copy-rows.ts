import { finished } from 'node:stream/promises';
import type pg from 'pg';
import { from as copyFrom } from 'pg-copy-streams';
import { cellText, type Row } from '@/lib/data/rows';

/** Text of all tables together that is gathered before it is sent. */
const TEXT_LENGTH_MAX = 8 * 1024 * 1024;

type Copy = { statement: string; lines: string[] };

/**
 * Loads rows into many tables through COPY over one connection: rows are gathered, and sent table by table while the
 * next ones are gathered.
 */
export class CopyRows {
  readonly #client: pg.ClientBase;
  #copies = new Map<string, Copy>();
  #textLength = 0;
  #sending: Promise<void> = Promise.resolve();

  constructor(client: pg.ClientBase) {
    this.#client = client;
  }

  /** Adds rows of a table with these columns; waits only while as many again are on their way. */
  async add(table: string, names: readonly string[], rows: readonly Row[]): Promise<void> {
    const copy = this.#copies.get(table) ?? {
      statement: `copy ${table} (${names.join(', ')}) from stdin`,
      lines: [],
    };
    this.#copies.set(table, copy);
    for (const row of rows) {
      const line = `${names.map((name) => copyText(row[name])).join('\t')}\n`;
      copy.lines.push(line);
      this.#textLength += line.length;
    }
    if (this.#textLength > TEXT_LENGTH_MAX) await this.#send();
  }

  /** Sends what is left, and waits until everything has arrived. */
  async end(): Promise<void> {
    await this.#send();
    await this.#sending;
  }

  async #send(): Promise<void> {
    await this.#sending;
    const copies = [...this.#copies.values()];
    this.#copies = new Map();
    this.#textLength = 0;
    this.#sending = this.#copyAll(copies);
    this.#sending.catch(() => undefined);
  }

  async #copyAll(copies: readonly Copy[]): Promise<void> {
    for (const { statement, lines } of copies) {
      const stream = this.#client.query(copyFrom(statement));
      stream.end(lines.join(''));
      await finished(stream);
    }
  }
}

const ESCAPES: Record<string, string> = { '\\': '\\\\', '\t': '\\t', '\n': '\\n', '\r': '\\r' };

/** A value in COPY's text format. */
function copyText(value: Row[string] | undefined): string {
  const text = cellText(value);
  if (text === null) return '\\N';
  return /[\\\t\n\r]/.test(text) ? text.replace(/[\\\t\n\r]/g, (each) => ESCAPES[each] ?? each) : text;
}
