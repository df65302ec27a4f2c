import type { UsedUnit } from '@/lib/domain/genealogy/answer';

/** A where-used answer of any model as text, so that answers are equal when their texts are. */
export function canonicalAnswer(rows: readonly Record<string, unknown>[]): string {
  return JSON.stringify(
    rows.map(
      ({
        unit,
        product,
        revision,
        certainty,
        relation,
        place,
        station,
        container,
        shipment,
        customer,
        through,
      }) => [
        unit,
        product,
        revision,
        certainty,
        relation,
        place ?? null,
        place === 'station' ? station : null,
        place === 'container' || place === 'shipped' ? container : null,
        place === 'shipped' ? [shipment, customer] : null,
        typeof through === 'string' ? through.split(' ').filter((each) => each !== '') : (through ?? []),
      ],
    ),
  );
}

/** Reelkin's own answer in the form of the others. */
export function flatAnswer(units: readonly UsedUnit[]): Record<string, unknown>[] {
  return units.map(({ place, ...unit }) => ({ ...unit, ...(place ?? {}), place: place?.kind ?? null }));
}

/** Stops the bench when two models answer differently. */
export function expectEqual(answers: { model: string; answer: string }[], question: string): void {
  const [first, ...others] = answers;
  for (const other of others)
    if (first !== undefined && other.answer !== first.answer)
      throw new Error(
        `${first.model} and ${other.model} answer "${question}" differently:\n${difference(first.answer, other.answer)}`,
      );
}

function difference(a: string, b: string): string {
  let at = 0;
  while (a[at] === b[at]) at += 1;
  const from = Math.max(0, at - 200);
  return `… ${a.slice(from, at + 200)}\n… ${b.slice(from, at + 200)}`;
}
