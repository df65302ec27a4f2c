/** A row as it goes into a table, by column. */
export type Row = Record<string, string | number | boolean | string[] | object | null>;

/** A value as PostgreSQL reads it in text; null stays null. */
export function cellText(value: Row[string] | undefined): string | null {
  if (value === null || value === undefined) return null;
  if (typeof value === 'string') return value;
  if (typeof value === 'number' || typeof value === 'boolean') return String(value);
  if (Array.isArray(value)) return `{${value.map((each) => JSON.stringify(each)).join(',')}}`;
  return JSON.stringify(value);
}

/** Columns with their types, as in `unit text, positions text[]`. */
type Column = { name: string; type: string };

export function readColumns(columns: string): Column[] {
  return columns.split(', ').map((column) => {
    const [name = '', type = ''] = column.split(' ');
    return { name, type };
  });
}

/**
 * Rows as a source for `insert … select`: one array a column, which PostgreSQL reads much faster than objects. `from`
 * has the alias r and numbers its rows as r.ordinality; `select` are the columns in order.
 */
export function rowsSource(
  columns: readonly Column[],
  rows: readonly Row[],
): { names: string; select: string; from: string; values: (string | null)[][] } {
  const names = columns.map(({ name }) => name);
  // An array of arrays would come out flat: such a column travels as text.
  const isNested = (type: string) => type.endsWith('[]');
  const arrays = columns.map(({ type }, index) => `$${index + 1}::${isNested(type) ? 'text' : type}[]`);
  return {
    names: names.join(', '),
    select: columns.map(({ name, type }) => `r.${name}${isNested(type) ? `::${type}` : ''}`).join(', '),
    from: `unnest(${arrays.join(', ')}) with ordinality as r(${names.join(', ')}, ordinality)`,
    values: names.map((name) => rows.map((row) => cellText(row[name]))),
  };
}
