import type { Queryable } from '@/lib/data/pool';

/** Statements by those that were put together: there are as many as kinds of events that come together, some dozens. */
const statements = new Map<string, string>();

/**
 * Gathers writes into different tables that need not see each other, and sends them as one statement: a small
 * transaction's time goes into its statements more than into its rows.
 */
export class WritesTogether implements Queryable {
  readonly #writes: { text: string; values: unknown[] }[] = [];

  /** Takes a write at once; what it returns is not known before `send`. */
  query(text: string, values: unknown[] = []): ReturnType<Queryable['query']> {
    this.#writes.push({ text, values });
    return Promise.resolve({ rows: [], rowCount: null });
  }

  async send(db: Queryable): Promise<void> {
    if (this.#writes.length === 0) return;
    await db.query(
      this.#statement(),
      this.#writes.flatMap(({ values }) => values),
    );
  }

  #statement(): string {
    const key = this.#writes.map(({ text }) => text).join(';');
    const known = statements.get(key);
    if (known !== undefined) return known;
    let before = 0;
    const parts = this.#writes.map(({ text, values }, index) => {
      const shifted = text.replace(/\$(\d+)/g, (_, number: string) => `$${Number(number) + before}`);
      before += values.length;
      return `write_${index} as (${shifted})`;
    });
    const statement = `with ${parts.join(', ')} select`;
    statements.set(key, statement);
    return statement;
  }
}
