const QUOTE = 0x22;
const LINE_FEED = 0x0a;
const CARRIAGE_RETURN = 0x0d;

/** CSV whose lines end with a line feed, made to end with CR LF as RFC 4180 wants it; what is quoted stays as it is. */
export async function* endLines(parts: AsyncIterable<Buffer>): AsyncGenerator<Buffer> {
  let isQuoted = false;
  for await (const part of parts) {
    const ended = Buffer.allocUnsafe(2 * part.length);
    let length = 0;
    for (const byte of part) {
      if (byte === QUOTE) isQuoted = !isQuoted;
      if (byte === LINE_FEED && !isQuoted) {
        ended[length] = CARRIAGE_RETURN;
        length += 1;
      }
      ended[length] = byte;
      length += 1;
    }
    yield ended.subarray(0, length);
  }
}
