import { TRANSPORT_MS } from '@/scripts/demo/benches/bench';
import { BoardBenches } from '@/scripts/demo/benches/board-benches';
import { Failures } from '@/scripts/demo/benches/failures';
import { FinalBenches } from '@/scripts/demo/benches/final-benches';
import { Packing } from '@/scripts/demo/benches/packing';
import { QualityOffice } from '@/scripts/demo/benches/quality-office';
import { RepairBench } from '@/scripts/demo/benches/repair-bench';
import { SlotWatch } from '@/scripts/demo/incidents/slot-watch';
import { BoardStart } from '@/scripts/demo/line/board-start';
import { SmtLine } from '@/scripts/demo/line/smt-line';
import type { Stencil } from '@/scripts/demo/material/printer';
import type { ProductCode } from '@/scripts/demo/plant/products';
import type { LineCode } from '@/scripts/demo/plant/stations';
import type { World } from '@/scripts/demo/simulation/world';
import { WORN_STENCIL } from '@/scripts/demo/stories';

/** The stations of the plant, connected in the order of the routes. */
export type Floor = {
  world: World;
  lines: Record<LineCode, SmtLine>;
  watch: SlotWatch;
  bench: RepairBench;
  office: QualityOffice;
  finals: FinalBenches;
  packing: Packing;
  starts: BoardStart;
};

/** Stencils that the lines begin with, and how often each has printed before. */
const FIRST_STENCILS: Record<LineCode, Record<ProductCode, Stencil>> = {
  L1: {
    WX4: { item: WORN_STENCIL.stencil, prints: WORN_STENCIL.printsBefore },
    PSU2: { item: 'ST-PSU2-02', prints: 0 },
  },
  L2: { WX4: { item: 'ST-WX4-02', prints: 310 }, PSU2: { item: 'ST-PSU2-01', prints: 120 } },
};

/** Builds the stations of an empty plant. */
export function buildFloor(world: World): Floor {
  const bench = new RepairBench(world);
  const office = new QualityOffice(world);
  const failures = new Failures({ world, bench, office });
  const watch = new SlotWatch(world);
  const packing = new Packing(world);
  const finals = new FinalBenches({ world, failures, signed: (unit) => packing.push(unit) });
  bench.takeSupply = () => finals.hall.takeSupply();
  const boards = new BoardBenches({ world, failures, boardDone: (unit) => finals.hall.push(unit) });
  const line = (code: LineCode) =>
    new SmtLine({
      world,
      line: code,
      stencils: structuredClone(FIRST_STENCILS[code]),
      failures,
      watch,
      onDone: (unit) => {
        unit.isOffLine = true;
        world.agenda.after(world.random.between(...TRANSPORT_MS), () => boards.push(unit));
      },
    });
  const lines = { L1: line('L1'), L2: line('L2') };
  const starts = new BoardStart(world, (row, panel) => lines[row.line].push(panel));
  return { world, lines, watch, bench, office, finals, packing, starts };
}
