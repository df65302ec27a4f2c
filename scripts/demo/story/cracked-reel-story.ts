import type { Certainty, PlaceKind, Relation } from '@/lib/domain/genealogy/answer';
import type { DemoPlan } from '@/scripts/demo/plan-demo';
import { CRACKED_REEL } from '@/scripts/demo/stories';
import { recordedEvents } from '@/scripts/demo/story/recorded-events';
import { type StoryUnit, unitsThatUsed } from '@/scripts/demo/story/where-used';

/** Everything that a walk through story (a) names and counts, worked out from the plan. */
export type CrackedReelStory = {
  /** Units that came back: the first is diagnosed and repaired, the last lies on the table. */
  returned: { unit: string; customer: string; reference: string; symptom: string }[];
  /** Units that failed with the story's defect at its position: on the reel, and all others. */
  failed: { onReel: number; elsewhere: number };
  units: number;
  byPlace: Partial<Record<PlaceKind, number>>;
  byCertainty: Partial<Record<Certainty, number>>;
  byRelation: Partial<Record<Relation, number>>;
  /** Units with a part of the reel that left the plant, by customer. */
  shippedTo: { [customer: string]: number | undefined };
  /** How a person finds it, in five steps. */
  steps: string[];
};

/** Story (a) as somebody at the plant finds it, from a returned unit to everything that must be stopped. */
export function crackedReelStory(plan: DemoPlan): CrackedReelStory {
  const used = unitsThatUsed(plan, CRACKED_REEL.reel);
  const facts = {
    returned: returnedUnits(plan),
    failed: failedUnits(plan, used),
    units: used.length,
    byPlace: tally(used.map(({ place }) => place.kind)),
    byCertainty: tally(used.map(({ certainty }) => certainty)),
    byRelation: tally(used.map(({ relation }) => relation)),
    shippedTo: tally(
      used.flatMap(({ relation, place }) =>
        relation === 'contains' && place.customer !== null ? [place.customer] : [],
      ),
    ),
  };
  return { ...facts, steps: stepsOf(facts) };
}

function stepsOf(story: Omit<CrackedReelStory, 'steps'>): string[] {
  const { reel, lot, part, position, defect, slot } = CRACKED_REEL;
  const { returned, failed, units, byPlace, byCertainty, byRelation } = story;
  const [first] = returned;
  return [
    `Scan the returned unit ${first?.unit} (${first?.reference}, ${first?.customer}) in Trace: its function test failed with ${defect} at ${position}.`,
    `In its as-built record, ${position} came from reel ${reel} (${part}, lot ${lot}), slot ${slot} of the first placement machine.`,
    `Open the reel: ${units} units used it, ${byCertainty.certain ?? 0} certainly and ${byCertainty.possible ?? 0} possibly; it stands in a machine again.`,
    `Look at where they are: ${byPlace.shipped ?? 0} shipped, ${byPlace.container ?? 0} in cartons, ${byPlace.stock ?? 0} in stock, ${byPlace.station ?? 0} on the way, ${byPlace.returned ?? 0} returned, ${byPlace.scrapped ?? 0} scrapped; ${byRelation.formerly ?? 0} no longer have the part.`,
    `Compare: ${failed.onReel} units with this reel failed with ${defect} at ${position}, and ${failed.elsewhere} others. Hold the reel and its lot, and save the list.`,
  ];
}

function returnedUnits(plan: DemoPlan): CrackedReelStory['returned'] {
  return plan.events.flatMap((event) => {
    if (event.type !== 'unit.returned') return [];
    const { unit, customer = '', reference = '', symptom = '' } = event.body;
    return [{ unit, customer, reference, symptom }];
  });
}

function failedUnits(plan: DemoPlan, used: readonly StoryUnit[]): CrackedReelStory['failed'] {
  const onReel = new Set(used.map(({ unit }) => unit));
  const failed = new Set<string>();
  for (const event of recordedEvents(plan)) {
    if (event.type !== 'unit.processed') continue;
    const { unit, defects = [] } = event.body;
    const { defect, position } = CRACKED_REEL;
    if (defects.some((each) => each.code === defect && each.position === position)) failed.add(unit);
  }
  const count = [...failed].filter((unit) => onReel.has(unit)).length;
  return { onReel: count, elsewhere: failed.size - count };
}

function tally<Word extends string>(words: readonly Word[]): { [word in Word]?: number } {
  const counts: { [word in Word]?: number } = {};
  for (const word of words) counts[word] = (counts[word] ?? 0) + 1;
  return counts;
}
