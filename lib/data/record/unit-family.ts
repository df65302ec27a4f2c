import type { JoiningFact, RecordCache } from '@/lib/data/record/record-cache';
import type { LoggedEvent } from '@/lib/domain/events/logged-event';
import { compareKeys } from '@/lib/domain/time';

/** Deepest nesting of units that is followed. */
const DEPTH_MAX = 64;
// Whatever leaves is looked into, and what would go into itself.
const LOOKING_INSIDE: readonly LoggedEvent['type'][] = ['unit.packed', 'container.shipped', 'unit.joined'];

/** Loads the units around the given ones and, where the event's rules look there, inside them; and names them. */
export async function unitFamily(
  cache: RecordCache,
  event: LoggedEvent,
  units: readonly string[],
): Promise<string[]> {
  const outer = await climb(units, async (level) => {
    await cache.joiningsOfInner.require(level);
    return level.flatMap((unit) => outerOf(cache, event, unit) ?? []);
  });
  if (!LOOKING_INSIDE.includes(event.type)) return [...outer];
  const inner = await climb(units, async (level) => {
    await cache.joiningsOfOuter.require(level);
    return level.flatMap((unit) => innerOf(cache, event, unit));
  });
  return [...new Set([...outer, ...inner])];
}

/** Everything that is reached level by level, each once. */
async function climb(
  units: readonly string[],
  next: (level: string[]) => Promise<string[]>,
): Promise<Set<string>> {
  const reached = new Set<string>();
  let level = [...units];
  for (let depth = 0; level.length > 0 && depth < DEPTH_MAX; depth += 1) {
    level = [...new Set(await next(level))].filter((unit) => !reached.has(unit));
    for (const unit of level) reached.add(unit);
  }
  return reached;
}

/** Units inside a unit just before the event, at any depth; the caller has loaded the family. */
export function innerOf(cache: RecordCache, event: LoggedEvent, unit: string): string[] {
  const found = new Set<string>();
  const queue = [unit];
  for (let each = queue.pop(); each !== undefined; each = queue.pop())
    for (const joining of cache.joiningsOfOuter.get(each)) {
      const { inner } = joining;
      if (!lastsAt(joining, event) || found.has(inner) || inner === unit) continue;
      found.add(inner);
      queue.push(inner);
    }
  return [...found];
}

/** The unit that held a unit just before the event, or null; the caller has loaded the family. */
export function outerOf(cache: RecordCache, event: LoggedEvent, unit: string): string | null {
  const open = cache.joiningsOfInner.get(unit).filter((joining) => lastsAt(joining, event));
  return open.at(-1)?.outer ?? null;
}

/** Under `record` the event is in the record when it is judged: neither its own joining nor its own separation counts. */
function lastsAt({ from, to }: JoiningFact, event: LoggedEvent): boolean {
  return compareKeys(from, event) < 0 && compareKeys(event, to) <= 0;
}
