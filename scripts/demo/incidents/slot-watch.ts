import type { PlacementWatch, SmtLine } from '@/scripts/demo/line/smt-line';
import type { LineCode } from '@/scripts/demo/plant/stations';
import type { DemoUnit, Panel } from '@/scripts/demo/simulation/unit';
import type { World } from '@/scripts/demo/simulation/world';
import { CRACKED_REEL, WRONG_REEL } from '@/scripts/demo/stories';

/** Share of boards with a capacitor of the cracked reel that fail at their first function test. */
const CRACKED_AT_TEST = 0.045;

/** Into the placing of a panel, which takes longer. */
const MIDDLE_MS = 80_000;

type Standing = { cracked: string | null; wrong: string | null };

/** Sees which boards took parts from the reels of the stories. */
export class SlotWatch implements PlacementWatch {
  readonly #world: World;
  readonly #before = new Map<Panel, Standing>();
  /** Boards placed while the wrong reel stood in its slot to the end, in order. */
  readonly wronglyPlaced: DemoUnit[] = [];
  /** Boards during whose placing the wrong reel was taken out. */
  readonly doubtful: DemoUnit[] = [];
  readonly #during = new Map<LineCode, () => void>();

  constructor(world: World) {
    this.#world = world;
  }

  /** Asks for something in the middle of the next placing at a line's first machine. */
  duringNextPlacing(line: LineCode, act: () => void): void {
    this.#during.set(line, act);
  }

  begins(line: SmtLine, panel: Panel): void {
    const act = this.#during.get(line.line);
    this.#during.delete(line.line);
    if (act !== undefined) this.#world.agenda.after(MIDDLE_MS, act);
    this.#before.set(panel, standingAt(line));
  }

  ends(line: SmtLine, panel: Panel): boolean {
    const before = this.#before.get(panel);
    this.#before.delete(panel);
    const now = standingAt(line);
    if (panel.product !== 'WX4' || before === undefined) return false;
    if (before.cracked === CRACKED_REEL.reel && now.cracked === CRACKED_REEL.reel)
      for (const unit of panel.units)
        unit.crack = this.#world.random.chance(CRACKED_AT_TEST) ? 'at-test' : 'sound';
    if (line.line !== 'L1') return false;
    if (now.wrong === WRONG_REEL.reel) {
      this.wronglyPlaced.push(...panel.units);
      return true;
    }
    if (before.wrong === WRONG_REEL.reel) this.doubtful.push(...panel.units);
    return false;
  }
}

function standingAt({ placer1 }: SmtLine): Standing {
  return {
    cracked: placer1.feeder(CRACKED_REEL.slot).stock?.item ?? null,
    wrong: placer1.feeder(WRONG_REEL.slot).stock?.item ?? null,
  };
}
