import type { Random } from '@/tests/reference/model/random';
import type { BomLine, PlantFile, PlantProduct } from '@/tests/reference/model/wire-types';

/** The designators that bills of materials and events share, few so that they meet often. */
export const POSITIONS = ['C1', 'C2', 'C3', 'R1', 'R2', 'U1', 'U2', 'J1'];
/** Part numbers that bills of materials and items share. */
export const PARTS = ['P-1', 'P-2', 'P-3', 'P-4'];
/** Badges that the plant knows. */
export const BADGES = ['op-1', 'op-2', 'op-3'];

const OPERATIONS = ['print', 'place', 'reflow'];

/** 2 to 4 stations with slots of several kinds, 1 to 3 product revisions whose lines name some of them. */
export function randomPlant(random: Random, options: { samples: boolean }): PlantFile {
  const stations = Array.from({ length: random.int(2, 4) }, (_, index) => ({
    code: `ST-${index + 1}`,
    line: 'L1',
    operation: random.pick(OPERATIONS),
    slots: randomSlots(random),
  }));
  const named: [string, string][] = [
    ['MAIN', 'A'],
    ['MAIN', 'B'],
    ['SUB', 'A'],
  ];
  const operations = [...new Set(stations.map(({ operation }) => operation))];
  return {
    site: { code: 'TVE', name: 'Tarn Valley Electronics', timeZone: 'Europe/London' },
    parts: PARTS.map((number) => ({ number, description: `part ${number}` })),
    stations,
    products: random.some(named, random.int(1, 3)).map(([number, revision]) => ({
      number,
      revision,
      route: randomRoute(random, operations, options.samples),
      bom: randomBom(random, number, stations),
    })),
    operators: BADGES.map((badge) => ({ badge, name: `Operator ${badge}`, operations })),
  };
}

function randomSlots(random: Random): { name: string; holds: string }[] {
  const others = ['reel', 'reel', 'lot', 'stencil', 'profile', 'paste'];
  const holds = ['reel', ...random.some(others, random.int(1, 3))];
  return holds.map((kind, index) => ({ name: `F${index + 1}`, holds: kind }));
}

/** Each operation at most once, and at least one step that every unit owes. */
function randomRoute(random: Random, operations: readonly string[], samples: boolean) {
  const steps = random.some(operations, random.int(1, operations.length));
  const sampled = samples && steps.length > 1 && random.chance(0.4) ? random.int(0, steps.length - 1) : -1;
  return steps.map((operation, index) => ({
    step: (index + 1) * 10,
    operation,
    attempts: random.int(2, 9),
    ...(index === sampled ? { sample: 0.5 } : {}),
  }));
}

/** No position twice in one product; some slots named by two lines, some by none. */
function randomBom(
  random: Random,
  number: string,
  stations: readonly { code: string; slots: { name: string }[] }[],
): PlantProduct['bom'] {
  const free = random.some(POSITIONS, POSITIONS.length);
  const slots = stations.flatMap(({ code, slots }) =>
    slots.map(({ name }) => ({ station: code, slot: name })),
  );
  const lines: BomLine[] = [];
  for (let count = random.int(2, 5); count > 0 && free.length > 0; count -= 1) {
    const positions = free.splice(0, random.int(1, 3));
    const fromSlot = random.chance(0.8) ? random.pick(slots) : {};
    lines.push({ part: random.pick(PARTS), positions, ...fromSlot });
  }
  if (number === 'MAIN') lines.push({ product: 'SUB', positions: ['A1'] });
  return lines;
}
