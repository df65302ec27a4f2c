/**
 * The code that a payload is, when it can be nothing but a bare code: it begins with a letter and holds neither a
 * control character nor the header of a label. Null when it has to be read as a label first.
 */
export function bareCode(payload: string): string | null {
  const code = payload.trim();
  return /^\p{L}/u.test(code) && !/\p{Cc}|\[\)>/u.test(code) ? code : null;
}
