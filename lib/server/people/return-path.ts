/** The path of a page with what its address asked for, to come back to after signing in; only single texts are kept. */
export function returnPath(path: string, search: Readonly<Record<string, unknown>>): string {
  const query = new URLSearchParams();
  for (const [name, value] of Object.entries(search)) if (typeof value === 'string') query.set(name, value);
  return query.size === 0 ? path : `${path}?${query}`;
}
