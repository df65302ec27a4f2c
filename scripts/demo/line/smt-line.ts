import type { Failures } from '@/scripts/demo/benches/failures';
import { outcomeOf } from '@/scripts/demo/benches/outcome';
import { writeResult } from '@/scripts/demo/benches/write-result';
import { inspectPaste } from '@/scripts/demo/line/paste-inspection';
import { Placer } from '@/scripts/demo/line/placer';
import { ReflowOven } from '@/scripts/demo/line/reflow-oven';
import { Printer, type Stencil } from '@/scripts/demo/material/printer';
import type { ProductCode } from '@/scripts/demo/plant/products';
import type { LineCode } from '@/scripts/demo/plant/stations';
import type { DemoUnit, Panel } from '@/scripts/demo/simulation/unit';
import { WorkCentre } from '@/scripts/demo/simulation/work-centre';
import type { World } from '@/scripts/demo/simulation/world';

/** Looks at the first placement machine: the stories hang on what stands in its slots. */
export type PlacementWatch = {
  /** Placing begins. */
  begins(line: SmtLine, panel: Panel): void;
  /** Placing is over; true when a wrong reel stands there, which the machine reports as it is. */
  ends(line: SmtLine, panel: Panel): boolean;
};

type LineOptions = {
  world: World;
  line: LineCode;
  stencils: Record<ProductCode, Stencil>;
  failures: Failures;
  watch: PlacementWatch;
  /** Takes each board that passed the last inspection of the line. */
  onDone: (unit: DemoUnit) => void;
};

/** A placement line: print, paste inspection, two placement machines, oven, optical inspection. */
export class SmtLine {
  readonly line: LineCode;
  readonly printer: Printer;
  readonly placer1: Placer;
  readonly placer2: Placer;
  readonly #options: LineOptions;
  readonly #oven: ReflowOven;
  readonly #print: WorkCentre<Panel>;
  readonly #spi: WorkCentre<Panel>;
  readonly #place1: WorkCentre<Panel>;
  readonly #place2: WorkCentre<Panel>;
  readonly #reflow: WorkCentre<Panel>;
  readonly #aoi: WorkCentre<Panel>;

  constructor(options: LineOptions) {
    const { world, line } = options;
    this.#options = options;
    this.line = line;
    this.printer = new Printer(world, line, options.stencils);
    this.placer1 = new Placer(world, line, 1);
    this.placer2 = new Placer(world, line, 2);
    this.#oven = new ReflowOven(world, line);
    const machine = (begin: (panel: Panel) => number, finish: (panel: Panel) => void, servers = 1) =>
      new WorkCentre<Panel>({ world, unitsOf: ({ units }) => units, begin, finish, servers });
    this.#print = machine(
      (panel) => this.#beginPrint(panel),
      (panel) => this.#printed(panel),
    );
    this.#spi = machine(
      () => this.#seconds(22, 30),
      (panel) => inspectPaste(world, { line, units: panel.units, passed: () => this.#place1.push(panel) }),
    );
    this.#place1 = machine(
      (panel) => this.#beginPlace1(panel),
      (panel) => this.#placed1(panel),
    );
    this.#place2 = machine(
      (panel) => this.#beginPlace(this.placer2, panel),
      (panel) => this.#writePasses(panel, 'PLACE-2', this.#reflow),
    );
    this.#reflow = machine(
      (panel) => this.#beginReflow(panel),
      (panel) => this.#writePasses(panel, 'REFLOW', this.#aoi),
      4,
    );
    this.#aoi = machine(
      ({ units }) => this.#seconds(18, 26) * units.length,
      (panel) => this.#inspect(panel),
    );
  }

  /** Takes a panel that has its serial marks. */
  push(panel: Panel): void {
    this.#print.push(panel);
  }

  /** Brings moisture-sensitive reels back to the dry store, once the second machine stands. */
  returnMoistureSensitive(): void {
    if (this.#place2.isIdle) this.placer2.returnMoistureSensitive();
    else this.#options.world.agenda.after(60_000, () => this.returnMoistureSensitive());
  }

  #beginPrint(panel: Panel): number {
    const waitMs = Math.round(this.printer.prepare(panel.product));
    panel.startedMs = this.#options.world.agenda.nowMs + waitMs;
    return waitMs + this.#seconds(40, 55);
  }

  #printed(panel: Panel): void {
    const wear = this.printer.print(panel.product);
    for (const unit of panel.units) unit.stencilWear = wear;
    this.#writePasses(panel, 'PRINT', this.#spi);
  }

  #beginPlace1(panel: Panel): number {
    const totalMs = this.#beginPlace(this.placer1, panel);
    this.#options.world.agenda.at(panel.startedMs, () => this.#options.watch.begins(this, panel));
    return totalMs;
  }

  #placed1(panel: Panel): void {
    const { world, watch } = this.#options;
    const isWrong = watch.ends(this, panel);
    const { startedMs, units } = panel;
    for (const unit of units) {
      if (isWrong) unit.isRecordedOnly = true;
      const event = writeResult(world, { unit, station: this.placer1.station, fault: null, startedMs });
      if (isWrong) unit.heldBy = event;
    }
    (panel.product === 'WX4' ? this.#place2 : this.#reflow).push(panel);
  }

  #beginPlace(placer: Placer, panel: Panel): number {
    const { startedMs, totalMs } = placer.place(panel.product, panel.units.length);
    panel.startedMs = startedMs;
    return totalMs;
  }

  #beginReflow(panel: Panel): number {
    const waitMs = this.#oven.prepare(panel.product);
    panel.startedMs = this.#options.world.agenda.nowMs + waitMs;
    return waitMs + this.#seconds(325, 345);
  }

  #inspect(panel: Panel): void {
    const { world, failures, onDone } = this.#options;
    for (const unit of panel.units) {
      const fault = unit.isRecordedOnly ? null : outcomeOf(world, unit, 'aoi');
      const event = writeResult(world, { unit, station: `${this.line}-AOI`, fault });
      if (fault === null) {
        failures.passed(unit, 'aoi');
        unit.isRecordedOnly = false;
        onDone(unit);
      } else {
        const again = () => this.#aoi.push({ ...panel, units: [unit] });
        failures.failed({ unit, operation: 'aoi', event, fault, again });
      }
    }
  }

  #writePasses(panel: Panel, name: string, next: WorkCentre<Panel>): void {
    const { units, startedMs } = panel;
    const station = `${this.line}-${name}`;
    for (const unit of units) writeResult(this.#options.world, { unit, station, fault: null, startedMs });
    next.push(panel);
  }

  #seconds(low: number, high: number): number {
    return Math.round(this.#options.world.random.between(low, high) * 1000);
  }
}
