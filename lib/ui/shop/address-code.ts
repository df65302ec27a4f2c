/** A code that an address carries, or null: of a parameter that is repeated nobody knows which one is meant. */
export function addressCode(parameter: unknown): string | null {
  if (typeof parameter !== 'string') return null;
  const code = parameter.trim();
  return code === '' ? null : code;
}
