import type { LateEvent } from '@/lib/data/moment/late-event';
import type { MomentRecord } from '@/lib/data/moment/moment-record';
import { type Cause, changesBetween, type Standings } from '@/lib/domain/genealogy/difference';
import { formatInstant } from '@/lib/domain/time';

/** Most answers that are made on the way from one answer to the other, and most units in all of them together. */
const ANSWERS_MAX = 200;
const UNITS_MAX = 500_000;

/** Late events of which each changes the standing of its own unit only, or one alone. */
type Step = LateEvent[];

/**
 * What changed an answer on its way from `before`: late events arrive in a record, all at once first; where that changes
 * the answer, each half of them alone, down to the one that did it. Work grows with the changes, not with the events.
 * When it comes to its bound, what is left is told as one of several.
 */
export async function findCauses(
  record: Pick<MomentRecord, 'attempt' | 'play'> & {
    /** Units whose standing may depend on another unit's events. */
    relatedUnits: (late: readonly LateEvent[]) => Promise<ReadonlySet<string>>;
  },
  {
    before,
    late,
    answer,
  }: { before: Standings; late: readonly LateEvent[]; answer: () => Promise<Standings> },
): Promise<{ after: Standings; causes: ReadonlyMap<string, Cause> }> {
  const causes = new Map<string, Cause>();
  let [answerCount, unitCount] = [0, 0];
  const isSpent = () => answerCount >= ANSWERS_MAX || unitCount >= UNITS_MAX;
  const note = (from: Standings, to: Standings, steps: readonly Step[]) => {
    for (const { unit } of changesBetween(from, to)) causes.set(unit, causeOf(unit, steps));
  };

  /** Plays steps on a record that answers `from`; `to` is what it answers after them, where that is known. */
  const arrive = async (
    steps: readonly Step[],
    from: Standings,
    to: Standings | null,
  ): Promise<Standings> => {
    if (to !== null) {
      const isSettled = steps.length === 1 || isSpent() || changesBetween(from, to).length === 0;
      if (!isSettled) return halve(steps, from, to);
      note(from, to, steps);
      await record.play(steps.flat());
      return to;
    }
    let next = from;
    const isSettled = await record.attempt(async () => {
      await record.play(steps.flat());
      next = await answer();
      answerCount += 1;
      unitCount += next.size;
      return steps.length === 1 || isSpent() || changesBetween(from, next).length === 0;
    });
    if (!isSettled) return halve(steps, from, next);
    note(from, next, steps);
    return next;
  };
  const halve = async (steps: readonly Step[], from: Standings, to: Standings): Promise<Standings> => {
    const half = Math.ceil(steps.length / 2);
    const middle = await arrive(steps.slice(0, half), from, null);
    return arrive(steps.slice(half), middle, to);
  };

  if (late.length === 0) return { after: before, causes };
  const related = await record.relatedUnits(late);
  const steps = stepsOf(late, (unit) => !related.has(unit));
  return { after: await arrive(steps, before, null), causes };
}

/**
 * Late events in the order of their arrival. Of what happened one after the other to units that have nothing to do with
 * each other, the first event of each unit comes in one step, then the second of each: it makes no difference to them.
 */
function stepsOf(late: readonly LateEvent[], isApart: (unit: string) => boolean): Step[] {
  const steps: Step[] = [];
  let layers: Step[] = [];
  let depths = new Map<string, number>();
  for (const each of late) {
    if (each.unit === null || each.received !== null || !isApart(each.unit)) {
      steps.push(...layers, [each]);
      layers = [];
      depths = new Map();
      continue;
    }
    const depth = depths.get(each.unit) ?? 0;
    depths.set(each.unit, depth + 1);
    const layer = layers[depth];
    if (layer === undefined) layers.push([each]);
    else layer.push(each);
  }
  return [...steps, ...layers];
}

function causeOf(unit: string, steps: readonly Step[]): Cause {
  const events = steps.flat();
  const [only] =
    steps.length === 1 ? (events.length === 1 ? events : events.filter((e) => e.unit === unit)) : [];
  if (only !== undefined) return { event: only.event.id };
  const arrivals = events.map(({ recordedAtUs }) => recordedAtUs).sort((left, right) => left - right);
  const [from = 0, to = from] = [arrivals[0], arrivals.at(-1)];
  return { among: events.length, from: formatInstant(from), to: formatInstant(to) };
}
