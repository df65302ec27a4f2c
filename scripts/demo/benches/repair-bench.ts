import { REPAIR_PARTS } from '@/scripts/demo/benches/outcome';
import type { Stock } from '@/scripts/demo/material/store';
import type { DemoUnit } from '@/scripts/demo/simulation/unit';
import { WorkCentre } from '@/scripts/demo/simulation/work-centre';
import type { World } from '@/scripts/demo/simulation/world';
import { CRACKED_REEL } from '@/scripts/demo/stories';

const STATION = 'REWORK-1';
const MINUTE_MS = 60_000;
const REEL_MS = 30_000;
/** Worth taking off a board before it is scrapped. */
const RADIO = { position: 'U7', part: 'U-RADIO-868' };

/** Work for the repair bench: parts to take off and to put on anew; none for a touch-up. */
export type Repair = {
  unit: DemoUnit;
  parts: readonly { position: string; part: string }[];
  reason: string;
  /** The board is on hold, and repaired under it. */
  isUnderHold?: boolean;
  /** Comes back when the repair is done. */
  done: () => void;
};

/** The repair bench, with its own reels of the parts that it needs. */
export class RepairBench {
  readonly #world: World;
  /** Another power supply for a gateway out of the stock, or null. */
  takeSupply: () => DemoUnit | null = () => null;
  readonly #stock = new Map<string, Stock>();
  #salvaged: { fromUnit: string; fromPosition: string } | null = null;
  readonly #centre: WorkCentre<Repair>;

  constructor(world: World) {
    this.#world = world;
    this.#centre = new WorkCentre<Repair>({
      world,
      unitsOf: ({ unit, isUnderHold }) => (isUnderHold ? [] : [unit]),
      begin: ({ parts }) => (4 + 4 * parts.length + world.random.between(0, 5)) * MINUTE_MS,
      finish: (repair) => this.#finish(repair),
    });
  }

  /** Asks for the bench's reels, which come in after the first delivery. */
  schedule(parts: readonly string[] = REPAIR_PARTS): void {
    const { agenda, calendar, store } = this.#world;
    parts.forEach((part, index) => {
      agenda.at(calendar.firstMs + 4 * 3_600_000 + index * REEL_MS, () =>
        this.#stock.set(part, store.receive(part, store.lotFor(part))),
      );
    });
  }

  send(repair: Repair): void {
    this.#centre.push(repair);
  }

  /** Takes the part off a position, now. */
  remove(unit: DemoUnit, position: string, reason: string): void {
    const { journal, roster } = this.#world;
    journal.write({
      type: 'part.removed',
      station: STATION,
      operator: roster.operatorAt(STATION),
      body: { unit: unit.serial, position, reason },
    });
  }

  /** Takes the radio off a board that is to be scrapped; the next board that needs one gets it. */
  salvageRadio(unit: DemoUnit): void {
    if (this.#salvaged !== null) return;
    this.remove(unit, RADIO.position, 'Salvaged before scrap.');
    this.#salvaged = { fromUnit: unit.serial, fromPosition: RADIO.position };
  }

  /** Gives a gateway another power supply; the old one stays aside. */
  replaceSupply(unit: DemoUnit, done: () => void): void {
    this.send({ unit, parts: [], reason: 'SUPPLY-NOISE', done: () => this.#exchangeSupply(unit, done) });
  }

  #exchangeSupply(unit: DemoUnit, done: () => void): void {
    const { agenda, journal, roster } = this.#world;
    const operator = roster.operatorAt(STATION);
    const supply = this.takeSupply();
    if (supply === null || unit.psu === null || unit.heldBy !== null) {
      agenda.after(30 * MINUTE_MS, () => this.#exchangeSupply(unit, done));
      return;
    }
    const envelope = { station: STATION, operator } as const;
    const { serial } = unit;
    journal.write({ type: 'unit.separated', ...envelope, body: { unit: unit.psu.serial, from: serial } });
    unit.psu = supply;
    journal.write({
      type: 'unit.joined',
      ...envelope,
      body: { unit: supply.serial, into: serial, position: 'A1' },
    });
    done();
  }

  /** Puts a part at a position, now: from the bench's reel, or a salvaged one. */
  #install(unit: DemoUnit, position: string, part: string): void {
    const { journal, roster } = this.#world;
    const salvaged = part === RADIO.part ? this.#salvaged : null;
    const stock = this.#stock.get(part);
    if (stock === undefined) throw new Error(`The repair bench has no ${part}.`);
    if (salvaged === null) stock.pieces -= 1;
    else this.#salvaged = null;
    journal.write({
      type: 'part.installed',
      station: STATION,
      operator: roster.operatorAt(STATION),
      body: { unit: unit.serial, position, ...(salvaged ?? { item: stock.item }) },
    });
  }

  #finish({ unit, parts, reason, done }: Repair): void {
    for (const { position } of parts) this.remove(unit, position, reason);
    this.#world.agenda.after(40_000, () => {
      for (const { position, part } of parts) this.#install(unit, position, part);
      if (parts.some(({ part }) => part === CRACKED_REEL.part)) unit.crack = 'none';
      done();
    });
  }
}
