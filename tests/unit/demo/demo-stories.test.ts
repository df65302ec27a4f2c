import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import type { LoggedEvent } from '@/lib/domain/events/logged-event';
import { isPicked } from '@/lib/domain/units/sample';
import { STENCIL_PRINTS_MAX } from '@/scripts/demo/material/printer';
import { planDemo } from '@/scripts/demo/plan-demo';
import { WX4 } from '@/scripts/demo/plant/products';
import { CRACKED_REEL, LATE_SCAN, WORN_STENCIL, WRONG_REEL } from '@/scripts/demo/stories';
import { crackedReelStory } from '@/scripts/demo/story/cracked-reel-story';
import { recordedEvents } from '@/scripts/demo/story/recorded-events';
import { type StoryUnit, unitsThatUsed } from '@/scripts/demo/story/where-used';
import { ReferenceModel } from '@/tests/reference/model/reference-model';
import type { WireEvent as ModelEvent, PlantFile as ModelPlant } from '@/tests/reference/model/wire-types';

const plan = planDemo('2026-03-20T18:00:00.000Z');
const events = recordedEvents(plan);

describe('story (a), the reel that cracks', () => {
  const story = crackedReelStory(plan);

  it('has boards everywhere: shipped to several customers, repaired, in stock, on the way, returned', () => {
    const { shipped = 0, stock = 0, station = 0, returned = 0 } = story.byPlace;
    expect(shipped).toBeGreaterThan(100);
    expect(Math.min(stock, station)).toBeGreaterThan(3);
    expect(returned).toBe(1);
    expect(story.byRelation.formerly).toBeGreaterThan(5);
    expect(story.byCertainty.possible).toBeGreaterThan(0);
    expect(Object.keys(story.shippedTo).length).toBeGreaterThan(3);
  });

  it('is found from two returned units, and by nothing but that reel', () => {
    expect(story.returned).toHaveLength(2);
    expect(story.failed.onReel).toBeGreaterThan(5);
    expect(story.failed.elsewhere).toBe(0);
    expect(story.steps).toHaveLength(5);
    expect(story.steps.join()).not.toContain('undefined');
  });
});

describe('story (b), the worn stencil', () => {
  it('shows in the paste inspection: many times more low paste beyond the limit of prints', () => {
    const shareOfLow = (serials: ReadonlySet<string>) => {
      const low = events.filter(
        ({ type, body }) =>
          type === 'unit.processed' &&
          serials.has(body.unit) &&
          body.defects?.some(({ code }) => code === WORN_STENCIL.defect),
      );
      return low.length / serials.size;
    };
    const used = unitsThatUsed(plan, WORN_STENCIL.stencil).map(({ unit }) => unit);
    const goodFor = (STENCIL_PRINTS_MAX - WORN_STENCIL.printsBefore) * 2;
    expect(used.length).toBeGreaterThan(goodFor);
    expect(shareOfLow(new Set(used.slice(0, goodFor)))).toBe(0);
    expect(shareOfLow(new Set(used.slice(goodFor)))).toBeGreaterThan(0.04);
    const after = unitsThatUsed(plan, WORN_STENCIL.successor).map(({ unit }) => unit);
    expect(shareOfLow(new Set(after))).toBe(0);
  });
});

describe('story (c), the wrong reel', () => {
  it('was recorded as it happened, and hours later repaired, let go, scrapped or left on hold', () => {
    const used = unitsThatUsed(plan, WRONG_REEL.reel);
    const count = (test: (unit: StoryUnit) => boolean) => used.filter(test).length;
    expect(used.length).toBeGreaterThan(40);
    expect(count(({ relation }) => relation === 'formerly')).toBeGreaterThan(30);
    expect(count(({ certainty }) => certainty === 'possible')).toBe(2);
    expect(count(({ place }) => place.kind === 'scrapped')).toBeGreaterThan(0);
    const mounts = plan.events.filter(
      ({ type, body, gate }) => type === 'item.mounted' && body.item === WRONG_REEL.reel && gate === 'record',
    );
    expect(mounts).toHaveLength(1);
  });
});

describe('story (d), the late scan', () => {
  it('took more pieces from the reel than the units that the record gives it', () => {
    const mounted = events.findIndex(
      ({ type, body }) => type === 'item.mounted' && body.item === LATE_SCAN.reel,
    );
    const after = events.slice(mounted);
    const end = after.findIndex(({ type, body }) => type === 'item.counted' && body.item === LATE_SCAN.reel);
    const count = after[end];
    const recorded = after
      .slice(0, end)
      .filter(({ type, station }) => type === 'unit.processed' && station === 'L2-PLACE-2').length;
    const taken = count?.type === 'item.counted' ? LATE_SCAN.pieces - count.body.quantity : 0;
    expect(recorded).toBeGreaterThan(5);
    expect(taken).toBeGreaterThan(recorded + 10);
  });
});

describe('the counts of the stories', () => {
  it.each([CRACKED_REEL.reel, WRONG_REEL.reel])('agree with the independent model about %s', (item) => {
    const used = unitsThatUsed(plan, item);
    const sample = sampleOf(used);
    const expected = sample.map(({ unit, certainty, relation, place }) => [
      unit,
      certainty,
      relation,
      place.kind,
    ]);
    const model = modelOf(new Set(sample.map(({ unit }) => unit)));
    const rows = model.whereUsed({ item }).units;
    expect(rows.map((row) => [row.unit, row.certainty, row.relation, row.place?.kind])).toEqual(expected);
  });
});

/** Some of every kind of answer. */
function sampleOf(used: readonly StoryUnit[]): StoryUnit[] {
  const seen = new Map<string, number>();
  return used.filter(({ certainty, relation, place }) => {
    const kind = `${certainty} ${relation} ${place.kind}`;
    seen.set(kind, (seen.get(kind) ?? 0) + 1);
    return (seen.get(kind) ?? 0) <= 3;
  });
}

/** The independent model with everything about some units, all slots of the first machines, and all containers. */
function modelOf(units: ReadonlySet<string>): ReferenceModel {
  const model = new ReferenceModel(z.custom<ModelPlant>().parse(withEveryList(plan.plant)), {
    picked: (unit, product, _, number) => {
      const step = product === 'WX4' ? WX4.route?.find((each) => each.step === number) : undefined;
      return step !== undefined && isPicked(unit, WX4, step);
    },
  });
  for (const event of events) if (isAbout(event, units)) model.record(z.custom<ModelEvent>().parse(event));
  return model;
}

function isAbout({ type, body, station = '' }: LoggedEvent, units: ReadonlySet<string>): boolean {
  if ('unit' in body) return units.has(body.unit);
  if (type.startsWith('container.')) return true;
  return type === 'item.received' || (type.startsWith('item.') && station.endsWith('-PLACE-1'));
}

/** The model reads documents in which nothing is left out. */
function withEveryList(plant: typeof plan.plant): unknown {
  return {
    ...plant,
    stations: plant.stations?.map((station) => ({ slots: [], ...station })),
    products: plant.products?.map((product) => ({
      ...product,
      bom: product.bom?.map((line) => ({ positions: [], ...line })),
    })),
  };
}
