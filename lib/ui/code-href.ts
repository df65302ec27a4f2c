/** What a code can name on a page of its own. */
export type CodeKind = 'unit' | 'item' | 'lot' | 'container' | 'shipment';

/**
 * Address of the page of a code, or null where none can exist: a browser takes a path of one or two dots for a
 * direction, even when it is escaped.
 */
export function codeHref(kind: CodeKind, code: string): string | null {
  if (code === '.' || code === '..') return null;
  return `/${kind}/${encodeURIComponent(code)}`;
}
