import type { asBuilt } from '@/lib/server/as-built';
import type { AsBuiltAnswer } from '@/tests/reference/model/answer-types';

type Answer = Awaited<ReturnType<typeof asBuilt>>;

/** The parts of an as-built record that the model answers too, in an order of their own. */
export function comparableRecord(record: NonNullable<Answer> | AsBuiltAnswer) {
  const { unit, product, revision, place, containers } = record;
  // The model does not say why a draw is only possible; the record always does.
  const draws = record.draws.map(
    ({ via, because = [], ...draw }: (typeof record.draws)[number] & { because?: string[] }) =>
      JSON.stringify({ ...draw, via: via.length > 0 }, Object.keys({ ...draw, via }).sort()),
  );
  const stays = (rows: typeof record.children) =>
    rows.map(({ unit: other, position, at, by, until, endedBy }) => ({
      other,
      position,
      at,
      by,
      until,
      endedBy,
    }));
  return {
    unit,
    product,
    revision,
    place,
    containers,
    draws: [...new Set(draws)].sort(),
    children: stays(record.children),
    parents: stays(record.parents),
    events: record.events.map((event) => [event.id.toLowerCase(), event.voided]),
  };
}
