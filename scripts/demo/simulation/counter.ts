/** Codes in a row: prefix and five digits. */
export function counter(prefix: string, first: number): () => string {
  let next = first;
  return () => {
    next += 1;
    return `${prefix}${String(next - 1).padStart(5, '0')}`;
  };
}
