import { Shipping } from '@/scripts/demo/benches/shipping';
import { CUSTOMERS, type Customer } from '@/scripts/demo/customers';
import { counter } from '@/scripts/demo/simulation/counter';
import type { DemoUnit } from '@/scripts/demo/simulation/unit';
import { WorkCentre } from '@/scripts/demo/simulation/work-centre';
import type { World } from '@/scripts/demo/simulation/world';

/** Share of units that come out of their carton once more. */
const UNPACK_CHANCE = 0.0015;

/** A carton that is being filled or was filled. */
export type Carton = { code: string; customer: Customer; units: DemoUnit[] };

/** The packing benches: each fills the cartons of one customer's pallet after the other. */
export class Packing {
  readonly shipping: Shipping;
  readonly #benches: readonly PackBench[];

  constructor(world: World) {
    this.shipping = new Shipping(world);
    const orders = orderBook();
    const nextCode = counter('CT-', 118);
    this.#benches = ['PACK-1', 'PACK-2'].map(
      (station) => new PackBench({ world, station, shipping: this.shipping, orders, nextCode }),
    );
  }

  /** Takes a signed unit. */
  push(unit: DemoUnit): void {
    const bench = this.#benches.reduce((best, each) => (each.load < best.load ? each : best));
    bench.push(unit);
  }
}

type PackOptions = {
  world: World;
  station: string;
  shipping: Shipping;
  orders: () => Customer;
  nextCode: () => string;
};

class PackBench {
  readonly #options: PackOptions;
  readonly #centre: WorkCentre<DemoUnit>;
  #customer: Customer;
  #cartonsLeft: number;
  #carton: Carton | null = null;

  constructor(options: PackOptions) {
    const { world, orders } = options;
    this.#options = options;
    this.#customer = orders();
    this.#cartonsLeft = this.#customer.palletSize;
    this.#centre = new WorkCentre<DemoUnit>({
      world,
      unitsOf: (unit) => [unit],
      begin: () => world.random.between(40_000, 65_000),
      finish: (unit) => this.#pack(unit),
    });
  }

  get load(): number {
    return this.#centre.load;
  }

  push(unit: DemoUnit): void {
    this.#centre.push(unit);
  }

  #pack(unit: DemoUnit): void {
    const { world, station, shipping, nextCode } = this.#options;
    this.#carton ??= { code: nextCode(), customer: this.#customer, units: [] };
    const carton = this.#carton;
    world.journal.write({
      type: 'unit.packed',
      station,
      operator: world.roster.onDuty('packer', station),
      body: { unit: unit.serial, container: carton.code },
    });
    unit.carton = carton.code;
    carton.units.push(unit);
    if (world.random.chance(UNPACK_CHANCE)) this.#lookAgain(unit, carton);
    if (carton.units.length < carton.customer.cartonSize) return;
    this.#carton = null;
    this.#countCarton();
    world.agenda.after(world.random.between(180_000, 480_000), () => shipping.load(carton));
  }

  /** A label is looked at again: the unit comes out of the carton and goes back. */
  #lookAgain({ serial }: DemoUnit, { code }: Carton): void {
    const { world, station } = this.#options;
    const { agenda, journal, roster } = world;
    const operator = roster.onDuty('packer', station);
    const body = { unit: serial, container: code };
    agenda.after(40_000, () => {
      journal.write({ type: 'unit.unpacked', station, operator, body });
      agenda.after(80_000, () => journal.write({ type: 'unit.packed', station, operator, body }));
    });
  }

  #countCarton(): void {
    this.#cartonsLeft -= 1;
    if (this.#cartonsLeft > 0) return;
    this.#customer = this.#options.orders();
    this.#cartonsLeft = this.#customer.palletSize;
  }
}

/** Customers' orders, one pallet each, in turn. */
function orderBook(): () => Customer {
  let index = 0;
  return () => {
    const customer = CUSTOMERS[index % CUSTOMERS.length];
    index += 1;
    if (customer === undefined) throw new Error('The demo has no customers.');
    return customer;
  };
}
