/** What events are ordered by: the instant of `at` in microseconds, ties by lower-case id (wire.md). */
export type OrderKey = { us: number; id: string };

/** Negative when `left` comes first; zero only for the same event. */
export function compareKeys(left: OrderKey, right: OrderKey): number {
  if (left.us !== right.us) return left.us - right.us;
  if (left.id === right.id) return 0;
  return left.id < right.id ? -1 : 1;
}

/** A stretch of the order, `from` included and `to` not; `to: null` means that it is still open. */
export type Period = { from: OrderKey; to: OrderKey | null };

/** What two periods share, or null when they share no moment. */
export function intersection(left: Period, right: Period): Period | null {
  const from = compareKeys(left.from, right.from) >= 0 ? left.from : right.from;
  const to = earlierEnd(left.to, right.to);
  return to !== null && compareKeys(from, to) >= 0 ? null : { from, to };
}

function earlierEnd(left: OrderKey | null, right: OrderKey | null): OrderKey | null {
  if (left === null) return right;
  if (right === null) return left;
  return compareKeys(left, right) <= 0 ? left : right;
}

/** Codes in order of their Unicode code points, which is not the order of JavaScript's `<`. */
export function compareCodes(left: string, right: string): number {
  return compareLists(
    Array.from(left, (character) => character.codePointAt(0) ?? 0),
    Array.from(right, (character) => character.codePointAt(0) ?? 0),
    (a, b) => a - b,
  );
}

/** Lists in lexicographic order of their members; a list comes before its own continuations. */
export function compareLists<Member>(
  left: readonly Member[],
  right: readonly Member[],
  compare: (a: Member, b: Member) => number,
): number {
  for (const [index, member] of left.entries()) {
    const other = right[index];
    if (other === undefined) return 1;
    const difference = compare(member, other);
    if (difference !== 0) return difference;
  }
  return left.length - right.length;
}

const RFC_3339 = /^(\d{4})-(\d\d)-(\d\d)T(\d\d):(\d\d):(\d\d)(?:\.(\d+))?(?:Z|([+-])(\d\d):(\d\d))$/;

/** The instant of an RFC 3339 text in microseconds since 1970; digits after the sixth are dropped. */
export function instantUs(text: string): number {
  const match = RFC_3339.exec(text);
  if (match === null) throw new Error(`not an RFC 3339 time: ${text}`);
  const number = (index: number) => Number(match[index] ?? '0');
  const wallMs = Date.UTC(number(1), number(2) - 1, number(3), number(4), number(5), number(6));
  const fractionUs = Number((match[7] ?? '').slice(0, 6).padEnd(6, '0'));
  const offsetMinutes = (number(9) * 60 + number(10)) * (match[8] === '-' ? -1 : 1);
  return (wallMs - offsetMinutes * 60_000) * 1000 + fractionUs;
}
