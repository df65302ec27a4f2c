import type { RandomHistory } from '@/tests/reference/model/random-history';

/** Questions about everything that a history mentions, and conditions on top of them. */
export function questionsAbout(events: RandomHistory['events'], seed: number): Record<string, string>[] {
  const items = new Set<string>();
  const lots = new Set<string>();
  const parts = new Set<string>();
  const stations = new Set<string>();
  const operators = new Set<string>();
  for (const { body, station, operator } of events) {
    if ('item' in body && typeof body.item === 'string') items.add(body.item);
    if ('used' in body) for (const used of body.used ?? []) items.add(used.item);
    if ('lot' in body && typeof body.lot === 'string') lots.add(body.lot);
    if ('boardLot' in body && typeof body.boardLot === 'string') {
      lots.add(body.boardLot);
      items.add(body.boardLot);
    }
    if ('part' in body && typeof body.part === 'string') parts.add(body.part);
    if (station !== undefined) stations.add(station);
    if (operator !== undefined) operators.add(operator);
  }
  const times = events.map((event) => event.at);
  const pick = (index: number) => times[(seed * 7919 + index * 104_729) % times.length] ?? '';
  const from = pick(1);
  const to = pick(2);
  const [station = 'S'] = stations;
  const [operator = 'O'] = operators;
  return [
    ...[...items].map((item) => ({ item })),
    ...[...lots].map((lot) => ({ lot })),
    ...[...parts].flatMap((part) => [{ part }, { part, from, to }]),
    ...[...stations].flatMap((each) => [{ station: each }, { station: each, from }]),
    ...[...operators].map((each) => ({ operator: each })),
    ...[...items].slice(0, 6).flatMap((item) => [
      { item, station },
      { item, operator },
      { item, from },
      { item, to },
      { item, relation: 'contains,touched' },
      { item, certainty: 'possible' },
      { item, place: 'shipped,station' },
    ]),
    { from, to },
  ];
}

/** A question with its filters as the model takes them. */
export function splitFilters(question: Record<string, string>) {
  const { place, relation, certainty, ...rest } = question;
  return {
    ...rest,
    ...(place === undefined ? {} : { place: place.split(',') }),
    ...(relation === undefined ? {} : { relation: relation.split(',') }),
    ...(certainty === undefined ? {} : { certainty: certainty.split(',') }),
  };
}
