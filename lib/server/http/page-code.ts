/** The code in a page's address as it was scanned: a page gets its part of the path still escaped. */
export function pageCode(escaped: string): string {
  try {
    return decodeURIComponent(escaped);
  } catch {
    // A stray percent sign was typed by hand: it stands for itself.
    return escaped;
  }
}
