import { DAY_PLAN, type DayPlanRow, PANEL_SIZE } from '@/scripts/demo/line/day-plan';
import { LotSupply } from '@/scripts/demo/material/lot-supply';
import { type ProductCode, REVISIONS } from '@/scripts/demo/plant/products';
import { type DemoUnit, newUnit, type Panel, serialOf } from '@/scripts/demo/simulation/unit';
import type { World } from '@/scripts/demo/simulation/world';

const HOUR_MS = 3_600_000;
const FIRST_SERIAL: Record<ProductCode, number> = { WX4: 4101, PSU2: 7201 };

/** Starts every panel of the three weeks: serial marks, board lot and place in the panel. */
export class BoardStart {
  readonly #world: World;
  readonly #send: (row: DayPlanRow, panel: Panel) => void;
  readonly #boards: Record<ProductCode, LotSupply>;
  readonly #nextSerial = { ...FIRST_SERIAL };
  #panels = 0;

  /** `send` takes each panel to the line of its row. */
  constructor(world: World, send: (row: DayPlanRow, panel: Panel) => void) {
    this.#world = world;
    this.#send = send;
    this.#boards = { WX4: new LotSupply(world, 'PCB-WX4-C'), PSU2: new LotSupply(world, 'PCB-PSU2-B') };
  }

  /** Asks for all panels of all working days. */
  schedule(): void {
    const { agenda, calendar, random } = this.#world;
    calendar.workdays.forEach((day, index) => {
      DAY_PLAN.forEach((row, at) => {
        const order = `WO-${3100 + index * DAY_PLAN.length + at}`;
        const stepMs = ((row.toHours - row.fromHours) * HOUR_MS) / row.panels;
        for (let panel = 0; panel < row.panels; panel += 1) {
          const startMs = day + row.fromHours * HOUR_MS + (panel + random.between(0, 0.35)) * stepMs;
          agenda.at(startMs, () => this.#start(row, order));
        }
      });
    });
  }

  #start(row: DayPlanRow, order: string): void {
    const { agenda, journal, roster } = this.#world;
    const { line, product } = row;
    const station = `${line}-MARK`;
    this.#panels += 1;
    const panel = `PN${String(this.#panels).padStart(6, '0')}`;
    const boardLot = this.#boards[product].take(PANEL_SIZE[product]);
    const units = Array.from({ length: PANEL_SIZE[product] }, () => this.#newUnit(row));
    units.forEach(({ serial }, index) => {
      journal.write({
        type: 'unit.started',
        station,
        operator: roster.operatorAt(station),
        body: {
          unit: serial,
          product,
          revision: REVISIONS[product],
          order,
          boardLot,
          panel,
          panelPosition: index + 1,
        },
      });
    });
    agenda.after(40_000, () => this.#send(row, { units, product, startedMs: agenda.nowMs }));
  }

  #newUnit({ product, line }: DayPlanRow): DemoUnit {
    const unit = newUnit(serialOf(product, this.#nextSerial[product]), product, line);
    this.#nextSerial[product] += 1;
    this.#world.units.push(unit);
    return unit;
  }
}
