import type { AsBuiltAnswer, WhereUsedAnswer, WhereUsedQuery } from '@/tests/reference/model/answer-types';
import { asBuilt } from '@/tests/reference/model/as-built';
import { doubtWindows, itemsOf, windowsAround } from '@/tests/reference/model/doubt-windows';
import type { Draw } from '@/tests/reference/model/draws';
import { type History, historyOf, type Recorded, recordedFrom } from '@/tests/reference/model/history';
import { type Missing, type MissingForGood, missingOf } from '@/tests/reference/model/missing';
import { instantUs } from '@/tests/reference/model/order';
import type { Picked } from '@/tests/reference/model/places';
import { itemsAround } from '@/tests/reference/model/slot-draws';
import { allDraws, whereUsed } from '@/tests/reference/model/where-used';
import type { PlantFile, WireEvent } from '@/tests/reference/model/wire-types';

/**
 * The trace answers of wire.md, computed from nothing but the list of events: plain loops, no indexes.
 * It knows none of the project's code, so that agreement with the SQL answers means something.
 */
export class ReferenceModel {
  readonly #plant: PlantFile;
  readonly #picked: Picked;
  readonly #recorded = new Map<string, Recorded>();
  #derived: { history: History; draws: Draw[] } | null = null;

  /** `picked` says which units owe a sampled step; without it none does before it has a result there. */
  constructor(plant: PlantFile, options: { picked?: Picked } = {}) {
    this.#plant = plant;
    this.#picked = options.picked ?? (() => false);
  }

  /** Takes the event as recorded; a second event of the same id changes nothing. */
  record(event: WireEvent): void {
    const recorded = recordedFrom(event);
    if (this.#recorded.has(recorded.key.id)) return;
    this.#recorded.set(recorded.key.id, recorded);
    this.#derived = null;
  }

  /**
   * Item, lot or part to units; without any of them, the units of the passes that meet the conditions. With `at`, of
   * what is dated up to then.
   */
  whereUsed(query: WhereUsedQuery, at?: string): WhereUsedAnswer {
    if (at !== undefined || this.#weighsOrOwes()) {
      const plain = this.#historyUntil(at === undefined ? Infinity : instantUs(at));
      const { item, lot, part } = query;
      const items =
        lot === undefined && part === undefined
          ? [item]
          : itemsOf(plain, query).filter((each) => item === undefined || each === item);
      const wanted = items.filter((each) => each !== undefined);
      const history = { ...plain, windows: doubtWindows(plain, wanted) };
      return whereUsed(history, allDraws(history), query, this.#picked);
    }
    if (this.#derived === null) {
      const history = this.#historyUntil(Infinity);
      this.#derived = { history, draws: allDraws(history) };
    }
    return whereUsed(this.#derived.history, this.#derived.draws, query, this.#picked);
  }

  /** The unit as the record stands, or as it stands when only what is dated up to `at` is looked at. */
  asBuilt(unit: string, at?: string): AsBuiltAnswer {
    const plain = this.#historyUntil(at === undefined ? Infinity : instantUs(at));
    const windows = this.#weighsOrOwes() ? windowsAround(plain, itemsAround(plain, unit)) : [];
    return asBuilt({ ...plain, windows }, unit, this.#picked);
  }

  /** Whether counts or gaps of devices can put the record in doubt. */
  #weighsOrOwes(): boolean {
    const { parts, stations } = this.#plant;
    return (
      parts.some(({ attrition }) => attrition !== undefined) ||
      stations.some(({ scannedBy = [] }) => scannedBy.length > 0)
    );
  }

  /** Devices whose missing events may still come, and those whose are lost for good. */
  missing(): { owing: Missing[]; lost: MissingForGood[] } {
    return missingOf(this.#historyUntil(Infinity));
  }

  #historyUntil(untilUs: number): History {
    return historyOf(this.#plant, [...this.#recorded.values()], untilUs);
  }
}
