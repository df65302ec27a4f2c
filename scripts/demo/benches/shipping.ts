import type { Carton } from '@/scripts/demo/benches/packing';
import type { Customer } from '@/scripts/demo/customers';
import { onWorkday } from '@/scripts/demo/simulation/calendar';
import { counter } from '@/scripts/demo/simulation/counter';
import type { World } from '@/scripts/demo/simulation/world';

const STATION = 'PACK-1';
const TRUCK_HOURS = 16.5;

type Pallet = { code: string; customer: Customer; cartons: Carton[] };

/** Pallets in the staging area, and the truck that comes every working day. */
export class Shipping {
  readonly #world: World;
  readonly #pallets = new Map<string, Pallet>();
  readonly #nextPallet = counter('PL-', 31);
  readonly #nextShipment = counter('SH-', 61);
  /** Asked to see each carton before it goes on a pallet; true keeps it in staging until it comes again. */
  keeps: (carton: Carton) => boolean = () => false;

  constructor(world: World) {
    this.#world = world;
  }

  /** Asks for the truck of every working day. */
  schedule(): void {
    const { agenda, calendar } = this.#world;
    calendar.workdays.forEach((_, index) => {
      agenda.at(onWorkday(calendar, index, TRUCK_HOURS), () => this.#shipFullPallets());
    });
  }

  /** Puts a full carton on its customer's open pallet, now. */
  load(carton: Carton): void {
    if (this.keeps(carton)) return;
    const { customer, code } = carton;
    const open = this.#pallets.get(customer.name);
    const isFull = open !== undefined && open.cartons.length >= customer.palletSize;
    if (isFull) this.#ship(open);
    const pallet = open === undefined || isFull ? { code: this.#nextPallet(), customer, cartons: [] } : open;
    this.#pallets.set(customer.name, pallet);
    pallet.cartons.push(carton);
    const { journal, roster } = this.#world;
    journal.write({
      type: 'container.nested',
      station: STATION,
      operator: roster.onDuty('packer', STATION),
      body: { container: code, into: pallet.code },
    });
  }

  /** Takes the last carton off a pallet that is not full, now, and puts it back after a while. */
  reload(): void {
    const { agenda, journal, random, roster } = this.#world;
    const pallet = [...this.#pallets.values()].find(
      ({ cartons, customer }) => cartons.length > 1 && cartons.length < customer.palletSize - 1,
    );
    const carton = pallet?.cartons.pop();
    if (pallet === undefined || carton === undefined) return;
    journal.write({
      type: 'container.unnested',
      station: STATION,
      operator: roster.onDuty('packer', STATION),
      body: { container: carton.code, from: pallet.code },
    });
    agenda.after(random.between(600_000, 1_200_000), () => this.load(carton));
  }

  #shipFullPallets(): void {
    let delayMs = 0;
    for (const pallet of [...this.#pallets.values()]) {
      if (pallet.cartons.length < pallet.customer.palletSize) continue;
      delayMs += 180_000;
      this.#world.agenda.after(delayMs, () => this.#ship(pallet));
    }
  }

  #ship(pallet: Pallet): void {
    if (this.#pallets.get(pallet.customer.name) !== pallet) return;
    this.#pallets.delete(pallet.customer.name);
    const { journal, roster } = this.#world;
    const { name, destination } = pallet.customer;
    journal.write({
      type: 'container.shipped',
      station: STATION,
      operator: roster.onDuty('packer', STATION),
      body: { container: pallet.code, shipment: this.#nextShipment(), customer: name, destination },
    });
    for (const { units } of pallet.cartons) for (const unit of units) unit.customer = name;
  }
}
