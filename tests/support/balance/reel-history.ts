import type { WireEvent } from '@/lib/domain/events/catalogue';
import type { PlantFile } from '@/lib/domain/plant/plant-file';
import { formatInstant, instantOf } from '@/lib/domain/time';
import { type Random, randomFrom } from '@/tests/reference/model/random';
import { eventMaker } from '@/tests/support/event-maker';

/** How the change of a reel escaped the scanner. */
export const MISSED = ['late', 'early', 'never'] as const;
export type Missed = (typeof MISSED)[number];

/** What really happened, unknown to the record. */
export type Planted = {
  missed: Missed;
  station: string;
  /** The reel that the record names for the units, and the one that they really drew from. */
  recorded: string;
  used: string;
  units: string[];
};

/** A history of a part's reels on two machines, with what was planted in it; null when every change was scanned. */
export type ReelHistory = { plant: PlantFile; events: WireEvent[]; planted: Planted | null };

const SLOT = '1-01';
const SECOND_US = 1_000_000;
const PRODUCTS = [
  { number: 'WX4', positions: ['C1', 'C2', 'C3', 'C4', 'C5'] },
  { number: 'PSU2', positions: ['C1', 'C2'] },
] as const;
const PIECES_MAX = 5;

type Reel = { code: string; left: number; lossesLeft: number };
type Options = { seed: number; missed: Missed | null; name?: string };

/**
 * Simulates some reels of one part that two machines work through, the second one for two products. Every pick-up may
 * lose pieces, never more than the attrition of what the reel has given since it was last counted. An unscanned swap,
 * if asked for, takes more pieces than the allowances of both reels together can hide.
 */
export function reelHistory({ seed, missed, name = '' }: Options): ReelHistory {
  return new ReelFloor(randomFrom(seed), name).run(missed);
}

class ReelFloor {
  readonly #random: Random;
  readonly #name: string;
  readonly #say = eventMaker('2026-03-02T06:00:00Z');
  readonly #attrition: number;
  readonly #size: number;
  readonly #events: WireEvent[] = [];
  readonly #shelf: Reel[] = [];
  /** Reels that were taken from the shelf and not retired. */
  readonly #out = new Set<Reel>();
  #nowUs = instantOf('2026-03-02T06:00:00Z');
  #reels = 0;
  #units = 0;

  constructor(random: Random, name: string) {
    this.#random = random;
    this.#name = name;
    this.#attrition = random.pick([0, 0.002, 0.01, 0.03]);
    this.#size = random.int(340, 440);
  }

  run(missed: Missed | null): ReelHistory {
    for (let reel = 0; reel < 9; reel += 1) this.#receive();
    const stations = ['L1', 'L2'].map((line) => `${line}${this.#name}`);
    const standing = new Map(stations.map((station) => [station, this.#mount(station, this.#takeReel())]));
    const changes = this.#random.int(3, 5);
    const swapAt = this.#random.int(0, changes - 1);
    let planted: Planted | null = null;
    for (let change = 0; change < changes; change += 1) {
      const station = this.#random.pick(stations);
      for (const each of stations)
        this.#work(each, { reel: standing.get(each) ?? missing(), passes: this.#random.int(4, 9) });
      const old = standing.get(station) ?? missing();
      if (change === swapAt && missed !== null) {
        const swap = this.#swap(station, old, missed);
        standing.set(station, swap.standing);
        planted = swap.planted;
      } else standing.set(station, this.#change(station, old));
    }
    // In the end some reels are counted in their slots, so that the last stays are weighed as well; others stay open.
    for (const [station, reel] of standing) this.#work(station, { reel, passes: this.#random.int(3, 8) });
    // Arithmetic needs at least one count after a swap.
    const isSure = this.#random.chance(0.5) ? planted?.recorded : planted?.used;
    for (const reel of this.#out) if (reel.code === isSure || this.#random.chance(0.4)) this.#count(reel);
    return { plant: this.#plant(stations), events: this.#events, planted };
  }

  /** The scanned change: out with the old reel, counted or written off, in with the next. */
  #change(station: string, old: Reel): Reel {
    if (this.#random.chance(0.3)) this.#unmount(station, old);
    const next = this.#mount(station, this.#takeReel());
    this.#putAway(old);
    return next;
  }

  #swap(station: string, old: Reel, missed: Missed): { standing: Reel; planted: Planted } {
    const [recorded, used] = [old, this.#takeReel()];
    const passes = this.#passesToNotice();
    const story = { missed, station };
    if (missed === 'never') {
      // The other reel helps out in the middle of the stay and goes back to the store, counted.
      const units = this.#work(station, { reel: used, passes });
      this.#putAway(used, { isReturned: true });
      this.#work(station, { reel: recorded, passes: this.#random.int(2, 5) });
      const planted = { ...story, recorded: recorded.code, used: used.code, units };
      return { standing: this.#change(station, recorded), planted };
    }
    if (missed === 'late') {
      // The old reel may be written off at once, or when the scan of the new one is made up for.
      const isAtOnce = this.#random.chance(0.5);
      if (isAtOnce) this.#putAway(recorded);
      const units = this.#work(station, { reel: used, passes });
      this.#mount(station, used);
      if (!isAtOnce) this.#putAway(recorded);
      this.#work(station, { reel: used, passes: this.#random.int(3, 8) });
      return { standing: used, planted: { ...story, recorded: recorded.code, used: used.code, units } };
    }
    // Early: the next reel is scanned while the old one goes on.
    this.#mount(station, used);
    const units = this.#work(station, { reel: recorded, passes });
    this.#putAway(recorded);
    this.#work(station, { reel: used, passes: this.#random.int(3, 8) });
    return { standing: used, planted: { ...story, recorded: used.code, used: recorded.code, units } };
  }

  /** As many passes as give, with the smallest product, more pieces than two reels' allowances can hide. */
  #passesToNotice(): number {
    const hidden = 2 * this.#attrition * this.#size;
    return Math.ceil((hidden + PIECES_MAX) / 2) + this.#random.int(0, 6);
  }

  /** Passes at a station that really draw from a reel, whatever the record says; the reels are large enough. */
  #work(station: string, { reel, passes }: { reel: Reel; passes: number }): string[] {
    return Array.from({ length: passes }, () => {
      const product = station.startsWith('L2') ? this.#random.pick(PRODUCTS) : PRODUCTS[0];
      this.#units += 1;
      const unit = `U${this.#name}-${this.#units}`;
      const startedUs = this.#later(30);
      this.#events.push(
        this.#say.started(
          { unit, product: `${product.number}${this.#name}`, revision: 'A' },
          this.#at(startedUs - SECOND_US),
        ),
        this.#say.passed(
          unit,
          station,
          { ...this.#at(this.#later(20)), gate: 'record' },
          { startedAt: formatInstant(startedUs) },
        ),
      );
      this.#draw(reel, product.positions.length);
      return unit;
    });
  }

  #draw(reel: Reel, pieces: number): void {
    reel.lossesLeft += pieces * this.#attrition;
    const lost = this.#random.int(0, Math.floor(reel.lossesLeft));
    reel.lossesLeft -= lost;
    reel.left -= pieces + lost;
    if (reel.left < 0) throw new Error('The simulated reel is too small.');
  }

  #putAway(reel: Reel, { isReturned = this.#random.chance(0.3) } = {}): void {
    if (isReturned) {
      this.#count(reel);
      return;
    }
    this.#out.delete(reel);
    this.#events.push(
      this.#say.make(
        'item.retired',
        { item: reel.code, reason: 'Used up.', left: reel.left },
        this.#at(this.#later(25)),
      ),
    );
  }

  #count(reel: Reel): void {
    reel.lossesLeft = 0;
    const body = { item: reel.code, quantity: reel.left, method: 'x-ray' };
    this.#events.push(this.#say.make('item.counted', body, this.#at(this.#later(40))));
  }

  #mount(station: string, reel: Reel): Reel {
    const at = this.#at(this.#later(15));
    this.#events.push(this.#say.mounted(reel.code, station, SLOT, { ...at, gate: 'record' }));
    return reel;
  }

  #unmount(station: string, { code, left }: Reel): void {
    const body = { item: code, slot: SLOT, ...(this.#random.chance(0.5) ? { left } : {}) };
    this.#events.push(
      this.#say.make('item.unmounted', body, { station, gate: 'record', ...this.#at(this.#later(15)) }),
    );
  }

  #receive(): void {
    this.#reels += 1;
    const reel = { code: `RL${this.#name}-${this.#reels}`, left: this.#size, lossesLeft: 0 };
    this.#shelf.push(reel);
    const body = { item: reel.code, kind: 'reel' as const, part: this.#part, quantity: reel.left };
    this.#events.push(this.#say.received(body, this.#at(this.#later(10))));
  }

  #takeReel(): Reel {
    const reel = this.#shelf.shift() ?? missing();
    this.#out.add(reel);
    return reel;
  }

  get #part(): string {
    return `C-100N${this.#name}`;
  }

  #later(seconds: number): number {
    this.#nowUs += this.#random.int(seconds, 2 * seconds) * SECOND_US;
    return this.#nowUs;
  }

  #at(us: number): { at: string } {
    return { at: formatInstant(us) };
  }

  #plant(stations: string[]): PlantFile {
    return {
      parts: [{ number: this.#part, attrition: this.#attrition }],
      stations: stations.map((code) => ({
        code,
        operation: 'place',
        slots: [{ name: SLOT, holds: 'reel' }],
      })),
      products: PRODUCTS.map(({ number, positions }) => ({
        number: `${number}${this.#name}`,
        revision: 'A',
        bom: stations.map((station) => ({
          part: this.#part,
          positions: [...positions],
          station,
          slot: SLOT,
        })),
      })),
    };
  }
}

function missing(): never {
  throw new Error('The simulated store is empty.');
}
