import type { Plant } from '@/lib/domain/plant/plant';
import { DEMO_PEOPLE } from '@/scripts/demo/people';
import type { Agenda } from '@/scripts/demo/simulation/agenda';
import type { Calendar } from '@/scripts/demo/simulation/calendar';

const HALF_SHIFT_MS = 6 * 3_600_000;
const NIGHT_BADGE = 'op-143';

/** Who is on duty where; people change places every half shift. */
export class Roster {
  readonly #agenda: Agenda;
  readonly #calendar: Calendar;
  readonly #plant: Plant;
  readonly #qualified = new Map<string, string[]>();

  constructor(options: { agenda: Agenda; calendar: Calendar; plant: Plant }) {
    this.#agenda = options.agenda;
    this.#calendar = options.calendar;
    this.#plant = options.plant;
  }

  /** Badge of the qualified operator at a station now. */
  operatorAt(station: string): string {
    const operation = this.#plant.station(station)?.operation ?? '';
    const { nowMs } = this.#agenda;
    if (operation === 'function-test' && !this.#calendar.isOpen(nowMs)) return NIGHT_BADGE;
    return this.#onTurn(this.#operatorsFor(operation), station);
  }

  /** Badge of the handler, QA inspector or packer on duty now; `place` sets apart who is where. */
  onDuty(role: 'handler' | 'qa' | 'packer', place = ''): string {
    const badges = DEMO_PEOPLE.filter((person) => person.role === role).map((person) => person.badge);
    return this.#onTurn(badges, place);
  }

  #operatorsFor(operation: string): string[] {
    const known = this.#qualified.get(operation);
    if (known !== undefined) return known;
    const badges = DEMO_PEOPLE.filter(
      ({ role, operations }) => role === 'operator' && operations.includes(operation),
    ).map((person) => person.badge);
    this.#qualified.set(operation, badges);
    return badges;
  }

  #onTurn(badges: readonly string[], place: string): string {
    const half = Math.floor((this.#agenda.nowMs - this.#calendar.firstMs) / HALF_SHIFT_MS);
    const offset = [...place].reduce((sum, letter) => sum + letter.charCodeAt(0), 0);
    const badge = badges[(half + offset) % badges.length];
    if (badge === undefined) throw new Error(`Nobody at the demo's plant can work at ${place}.`);
    return badge;
  }
}
