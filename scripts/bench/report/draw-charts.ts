import type { BenchReport, SizeReport } from '@/scripts/bench/report/bench-report';

const WIDTH = 640;
const HEIGHT = 360;
const EDGE = { left: 64, right: 190, top: 40, bottom: 44 };
// Distinguishable for the colour-blind (Okabe and Ito, from memory), on light and dark.
const COLOURS = ['#0072b2', '#d55e00', '#009e73', '#cc79a7', '#e69f00', '#56b4e9', '#999999', '#6a3d9a'];

type Line = { name: string; points: { x: number; y: number }[] };

/** One chart a question: cost against size, both scales logarithmic, as an SVG file by name. */
export function drawCharts({ sizes }: BenchReport): [string, string][] {
  const whereUsed = linesOf(sizes, ({ whereUsed: { times } }) =>
    Object.fromEntries(Object.entries(times).map(([name, { p50 }]) => [name, p50])),
  );
  const asBuilt = linesOf(sizes, (size) =>
    Object.fromEntries(Object.entries(size.asBuilt).map(([name, { p50 }]) => [name, p50])),
  );
  const storage = linesOf(sizes, ({ storage: { drawing, all, textbook } }) => ({
    Reelkin: drawing,
    'Reelkin, all passes': all,
    ...(textbook === null ? {} : { textbook }),
  }));
  const csv = linesOf(sizes, (size) => ({ Reelkin: size.csv.rowsPerSecond }));
  return [
    ['where-used.svg', chart('Where-used of one reel, ms (p50)', whereUsed)],
    ['as-built.svg', chart('As-built of one unit, ms (p50)', asBuilt)],
    ['storage.svg', chart('Bytes a unit for its draws', storage)],
    ['csv.svg', chart('Where-used of a stencil as CSV, rows a second', csv)],
  ];
}

function linesOf(
  sizes: readonly SizeReport[],
  valuesOf: (size: SizeReport) => Record<string, number>,
): Line[] {
  const lines = new Map<string, Line>();
  for (const size of sizes)
    for (const [name, y] of Object.entries(valuesOf(size))) {
      const line = lines.get(name) ?? { name, points: [] };
      line.points.push({ x: size.units, y });
      lines.set(name, line);
    }
  return [...lines.values()];
}

function chart(title: string, lines: readonly Line[]): string {
  const points = lines.flatMap((line) => line.points);
  const x = scale(
    points.map((point) => point.x),
    EDGE.left,
    WIDTH - EDGE.right,
  );
  const y = scale(
    points.map((point) => point.y),
    HEIGHT - EDGE.bottom,
    EDGE.top,
  );
  const grid = [
    ...decades(x.domain).map(
      (value) =>
        `<text x="${x.at(value)}" y="${HEIGHT - 22}" text-anchor="middle">${value.toLocaleString('en')}</text>`,
    ),
    ...decades(y.domain).map(
      (value) =>
        `<line x1="${EDGE.left}" x2="${WIDTH - EDGE.right}" y1="${y.at(value)}" y2="${y.at(value)}" stroke="#8888" />` +
        `<text x="${EDGE.left - 8}" y="${y.at(value) + 4}" text-anchor="end">${value.toLocaleString('en')}</text>`,
    ),
  ];
  const labels = placeLabels(lines, y);
  const drawn = lines.map((line, index) => {
    const colour = COLOURS[index % COLOURS.length];
    const path = line.points
      .map((point) => `${x.at(point.x).toFixed(1)},${y.at(point.y).toFixed(1)}`)
      .join(' ');
    const dots = line.points.map(
      (point) =>
        `<circle cx="${x.at(point.x).toFixed(1)}" cy="${y.at(point.y).toFixed(1)}" r="3.5" fill="${colour}" />`,
    );
    const label = `<text x="${WIDTH - EDGE.right + 12}" y="${(labels[index] ?? 0) + 4}" fill="${colour}">${line.name}</text>`;
    return `<polyline points="${path}" fill="none" stroke="${colour}" stroke-width="2" />${dots.join('')}${label}`;
  });
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${WIDTH} ${HEIGHT}" font-family="system-ui, sans-serif" font-size="12" fill="#777" role="img" aria-label="${title}">
<text x="${EDGE.left}" y="22" font-size="15" font-weight="600">${title}</text>
${grid.join('\n')}
${drawn.join('\n')}
<text x="${(EDGE.left + WIDTH - EDGE.right) / 2}" y="${HEIGHT - 6}" text-anchor="middle">units</text>
</svg>
`;
}

/** Names beside the ends of their lines, moved apart where they would cover each other. */
function placeLabels(lines: readonly Line[], y: { at(value: number): number }): number[] {
  const wanted = lines.map((line, index) => ({ index, y: y.at(line.points.at(-1)?.y ?? 1) }));
  const placed: number[] = [];
  let last = Number.NEGATIVE_INFINITY;
  for (const label of wanted.sort((a, b) => a.y - b.y)) {
    last = Math.max(label.y, last + 16);
    placed[label.index] = last;
  }
  return placed;
}

function scale(values: readonly number[], from: number, to: number) {
  const domain: [number, number] = [
    10 ** Math.floor(Math.log10(Math.min(...values))),
    10 ** Math.ceil(Math.log10(Math.max(...values) * 1.0001)),
  ];
  const [low, high] = domain.map(Math.log10) as [number, number];
  return { domain, at: (value: number) => from + ((Math.log10(value) - low) / (high - low)) * (to - from) };
}

function decades([low, high]: [number, number]): number[] {
  const values: number[] = [];
  for (let value = low; value <= high * 1.0001; value *= 10) values.push(Number(value.toPrecision(6)));
  return values;
}
