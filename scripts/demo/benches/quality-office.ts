import type { DemoUnit } from '@/scripts/demo/simulation/unit';
import type { World } from '@/scripts/demo/simulation/world';

const HOUR_MS = 3_600_000;

/** Something that a hold can stop. */
type Target = { kind: 'unit' | 'item' | 'lot' | 'container'; id: string };

/** The people of QA: they place holds and release them. */
export class QualityOffice {
  readonly #world: World;

  constructor(world: World) {
    this.#world = world;
  }

  /** Places a hold, now; returns its id. */
  place(target: Target, reason: string): string {
    const { journal, roster } = this.#world;
    return journal.write({ type: 'hold.placed', operator: roster.onDuty('qa'), body: { target, reason } });
  }

  /** Releases a hold, now. */
  release(hold: string, disposition: string, reason: string): void {
    const { journal, roster } = this.#world;
    const operator = roster.onDuty('qa');
    journal.write({ type: 'hold.released', operator, body: { hold, disposition, reason } });
  }

  /** Clears what was recorded against a rule, now. */
  clear(event: string, reason: string): void {
    const { journal, roster } = this.#world;
    journal.write({ type: 'exception.cleared', operator: roster.onDuty('qa'), body: { event, reason } });
  }

  /** Holds a board as soon as nobody works on it. */
  hold(unit: DemoUnit, reason: string): void {
    if (unit.isInService) {
      this.#world.agenda.after(20_000, () => this.hold(unit, reason));
      return;
    }
    unit.heldBy = this.place({ kind: 'unit', id: unit.serial }, reason);
  }

  /** Releases the hold that a board is under and lets it go on. */
  letGo(unit: DemoUnit, disposition: string, reason: string): void {
    if (unit.heldBy === null) return;
    this.release(unit.heldBy, disposition, reason);
    unit.heldBy = null;
    const { goOn } = unit;
    unit.goOn = null;
    goOn?.();
  }

  /** Scraps a board, now; it goes nowhere any more, and a hold on it has ended with that. */
  scrap(unit: DemoUnit, reason: string): void {
    const { journal, roster } = this.#world;
    unit.isScrapped = true;
    unit.goOn = null;
    const operator = roster.onDuty('qa');
    journal.write({ type: 'unit.scrapped', operator, body: { unit: unit.serial, reason } });
    if (unit.heldBy !== null) this.release(unit.heldBy, 'scrap', reason);
  }

  /** Asks for something that QA does after some hours, once the plant works again. */
  later(hours: number, act: () => void): void {
    const { agenda, calendar } = this.#world;
    const atMs = calendar.nextOpenMs(agenda.nowMs + hours * HOUR_MS);
    if (atMs < Number.POSITIVE_INFINITY) agenda.at(atMs, act);
  }
}
