import { ATTEMPTS_DEFAULT, routeOf } from '@/lib/domain/plant/plant';
import type { Fault } from '@/scripts/demo/benches/outcome';
import type { QualityOffice } from '@/scripts/demo/benches/quality-office';
import type { RepairBench } from '@/scripts/demo/benches/repair-bench';
import { REVISIONS } from '@/scripts/demo/plant/products';
import type { DemoUnit } from '@/scripts/demo/simulation/unit';
import type { World } from '@/scripts/demo/simulation/world';

/** A result that failed a board: the event, and how the board comes back to the station. */
export type Failure = {
  unit: DemoUnit;
  operation: string;
  event: string;
  fault: Fault;
  again: () => void;
};

const MINUTE_MS = 60_000;

/** What happens to boards that fail: another try, a repair, or, when the attempts are used up, a hold. */
export class Failures {
  readonly #world: World;
  readonly #bench: RepairBench;
  readonly #office: QualityOffice;

  constructor(options: { world: World; bench: RepairBench; office: QualityOffice }) {
    this.#world = options.world;
    this.#bench = options.bench;
    this.#office = options.office;
  }

  /** Notes a pass: the attempts count anew. */
  passed(unit: DemoUnit, operation: string): void {
    unit.tries.delete(operation);
  }

  /** Notes a fail and sees to the board. */
  failed(failure: Failure): void {
    const { unit, operation, event } = failure;
    const tries = (unit.tries.get(operation) ?? 0) + 1;
    unit.tries.set(operation, tries);
    if (tries < this.#attemptsAt(unit, operation)) {
      this.#cure(failure);
      return;
    }
    unit.heldBy = event;
    this.#office.later(this.#world.random.between(1.5, 5), () => this.#decide(failure));
  }

  #cure({ unit, fault, again }: Failure): void {
    const { agenda, random } = this.#world;
    const { code, position, cure } = fault;
    if (cure === 'retry') agenda.after(random.between(2, 6) * MINUTE_MS, again);
    else if (cure === 'scrap') this.#office.later(random.between(0.2, 1.5), () => this.#scrap(unit, code));
    else if (cure === 'new-supply') this.#bench.replaceSupply(unit, again);
    else {
      const parts = cure === 'touch-up' ? [] : [{ position, part: cure.replaceWith }];
      this.#bench.send({ unit, parts, reason: code, done: again });
    }
  }

  #scrap(unit: DemoUnit, reason: string): void {
    if (unit.product === 'WX4' && this.#world.random.chance(0.3)) this.#bench.salvageRadio(unit);
    this.#office.scrap(unit, reason);
  }

  /** A board whose attempts are used up is repaired once more, or scrapped. */
  #decide(failure: Failure): void {
    const { unit } = failure;
    if (this.#world.random.chance(0.35)) {
      this.#scrap(unit, 'Not worth another repair.');
      return;
    }
    this.#office.letGo(unit, 'rework', 'One more repair is allowed.');
    this.#cure(failure);
  }

  #attemptsAt(unit: DemoUnit, operation: string): number {
    const product = this.#world.plant.product(unit.product, REVISIONS[unit.product]);
    const step = routeOf(product).find((each) => each.operation === operation);
    return step?.attempts ?? ATTEMPTS_DEFAULT;
  }
}
