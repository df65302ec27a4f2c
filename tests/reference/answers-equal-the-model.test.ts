import { describe, expect, it } from 'vitest';
import { whereUsedQuestionSchema } from '@/lib/domain/genealogy/question';
import { isPicked } from '@/lib/domain/units/sample';
import { asBuilt } from '@/lib/server/as-built';
import { putPlant } from '@/lib/server/put-plant';
import { whereUsed } from '@/lib/server/where-used';
import { batches, randomHistory, shuffle } from '@/tests/reference/model/random-history';
import { ReferenceModel } from '@/tests/reference/model/reference-model';
import { closeDatabase, openFreshDatabase } from '@/tests/support/fresh-database';
import { recordHistory } from '@/tests/support/record-history';

const SEED_FIRST = Number(process.env.REELKIN_SEED ?? 1);
const HISTORY_COUNT = Number(process.env.REELKIN_HISTORIES ?? 24);

/** Questions about everything that a history mentions, and conditions on top of them. */
function questionsAbout(
  events: ReturnType<typeof randomHistory>['events'],
  seed: number,
): Record<string, string>[] {
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

function splitFilters(question: Record<string, string>) {
  const { place, relation, certainty, ...rest } = question;
  return {
    ...rest,
    ...(place === undefined ? {} : { place: place.split(',') }),
    ...(relation === undefined ? {} : { relation: relation.split(',') }),
    ...(certainty === undefined ? {} : { certainty: certainty.split(',') }),
  };
}

type Answer = Awaited<ReturnType<typeof asBuilt>>;

/** The parts of an as-built record that the model answers too, in an order of their own. */
function comparable(record: NonNullable<Answer> | ReturnType<ReferenceModel['asBuilt']>) {
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

describe('answers on PostgreSQL equal those of the independent model', () => {
  for (let seed = SEED_FIRST; seed < SEED_FIRST + HISTORY_COUNT; seed += 1)
    it(`history with seed ${seed}`, async () => {
      const fresh = await openFreshDatabase();
      const { plant, events } = randomHistory(seed);
      const model = new ReferenceModel(plant, {
        picked: (unit, number, revision, step) => {
          const product = plant.products.find((row) => row.number === number && row.revision === revision);
          const owed = product?.route.find((row) => row.step === step);
          return owed !== undefined && isPicked(unit, { number, revision }, owed);
        },
      });
      expect(await putPlant(plant, 'test')).toMatchObject({ ok: true });
      for (const batch of batches(seed, shuffle(seed, events), { repeats: 5 })) {
        const results = await recordHistory(batch, 1000);
        for (const result of results) expect(['recorded', 'already_recorded']).toContain(result.outcome);
      }
      for (const event of events) model.record(event);

      let unitCount = 0;
      for (const question of questionsAbout(events, seed)) {
        const answer = await whereUsed(whereUsedQuestionSchema.parse({ ...question, limit: 5000 }));
        const expected = model.whereUsed(splitFilters(question));
        // The model does not say why a unit is only possible; the answer always does.
        const units = answer.units.map(({ because, ...used }) => {
          expect((because ?? []).length > 0, used.unit).toBe(used.certainty === 'possible');
          return used;
        });
        expect({ question, counts: answer.counts, units }).toEqual({ question, ...expected });
        unitCount += answer.units.length;
      }
      expect(unitCount).toBeGreaterThan(0);

      const units = new Set(events.flatMap(({ body }) => ('unit' in body ? [body.unit] : [])));
      for (const unit of units) {
        for (const at of [undefined, events[(seed * 31) % events.length]?.at]) {
          const record = await asBuilt(unit, at);
          const expected = comparable(model.asBuilt(unit, at));
          if (record === null) expect(expected.events).toEqual([]);
          else expect(comparable(record)).toEqual(expected);
        }
      }
      await closeDatabase();
      await fresh.drop();
    });
});
