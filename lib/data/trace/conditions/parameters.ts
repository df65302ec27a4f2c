/** Takes a value of a statement and gives the text that stands for it. */
export type Parameter = (value: unknown, type: string) => string;

/** The values of one statement, numbered as they come. */
export function parameters(): { values: unknown[]; parameter: Parameter } {
  const values: unknown[] = [];
  return {
    values,
    parameter: (value, type) => {
      values.push(value);
      return `$${values.length}::${type}`;
    },
  };
}
