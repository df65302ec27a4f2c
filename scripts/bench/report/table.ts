import type { BenchReport, SizeReport } from '@/scripts/bench/report/bench-report';
import type { Timing } from '@/scripts/bench/report/percentiles';

const ms = (timing: Timing | undefined) =>
  timing === undefined ? '–' : `${timing.p50.toFixed(2)} / ${timing.p95.toFixed(2)} ms`;
const ratio = (value: number, target: string) => `${value.toFixed(2)} (${target})`;

/** The report as a Markdown table: each measure with its ratio and what it must reach. */
export function tableOf(report: BenchReport): string {
  const rows = [
    ...report.append.map(({ name, reelkin, bare, target }) => [
      `append, ${name}`,
      `${Math.round(reelkin)} events/s against ${Math.round(bare)}`,
      ratio(reelkin / bare, `≥ ${target}`),
    ]),
    ...report.sizes.flatMap(sizeRows),
    ...growthRows(report.sizes),
    ...httpRows(report),
  ];
  const machine = Object.entries(report.machine).map(([name, value]) => `${name} ${value}`);
  return `${machine.join(' · ')}\n\n${markdownTable(rows)}`;
}

/** Rows of measures as Markdown. */
export function markdownTable(rows: readonly string[][]): string {
  return [
    '| measure | p50 / p95 or rate | ratio (must reach) |',
    '|---|---|---|',
    ...rows.map((cells) => `| ${cells.join(' | ')} |`),
    '',
  ].join('\n');
}

function sizeRows({ units, loaded, whereUsed, asBuilt, storage, csv, lateMounts }: SizeReport): string[][] {
  const { times } = whereUsed;
  const own = times['Reelkin, the statement'];
  const against = (name: string, target: string) => {
    const other = times[name];
    return own === undefined || other === undefined ? '' : `${name} ${ratio(own.p50 / other.p50, target)}`;
  };
  const asBuiltRatio = (asBuilt.Reelkin?.p50 ?? 0) / (asBuilt.textbook?.p50 ?? Number.NaN);
  const late = lateMounts.map(({ rowsWritten, unitsMoved }) => `${rowsWritten} rows for ${unitsMoved} units`);
  const size = units.toLocaleString('en');
  return [
    ...loadRows(size, loaded),
    [
      `${size} units: where-used of a reel, ${whereUsed.rows.toFixed(0)} rows`,
      Object.entries(times)
        .map(([name, timing]) => `${name} ${ms(timing)}`)
        .join('; '),
      [against('floor', ''), against('floor with places', '≤ 2'), against('textbook', '≤ 1')]
        .filter(Boolean)
        .join('; '),
    ],
    [
      `${size} units: as-built`,
      `${ms(asBuilt.Reelkin)}; textbook ${ms(asBuilt.textbook)}`,
      Number.isNaN(asBuiltRatio) ? '' : ratio(asBuiltRatio, '≤ 2'),
    ],
    [
      `${size} units: bytes a unit for draws`,
      `${storage.drawing.toFixed(0)} (with all passes ${storage.all.toFixed(0)}); textbook ${storage.textbook?.toFixed(0) ?? '–'}`,
      storage.textbook === null
        ? ''
        : `1/${(storage.textbook / storage.drawing).toFixed(1)}, with all passes 1/${(storage.textbook / storage.all).toFixed(1)} (≤ 1/8)`,
    ],
    [
      `${size} units: where-used of a stencil as CSV`,
      `${csv.rows} rows, ${Math.round(csv.rowsPerSecond)} rows/s`,
      '(≥ 100,000 rows/s)',
    ],
    [`${size} units: one late mount`, late.join('; '), '(constant)'],
  ];
}

function loadRows(size: string, loaded: SizeReport['loaded']): string[][] {
  if ('times' in loaded)
    return [
      [
        `${size} units: the read tables of the size before, ${loaded.times} times`,
        `copied in SQL in ${loaded.copySeconds.toFixed(0)} s`,
        '',
      ],
    ];
  const { events, loadSeconds, rebuildSeconds } = loaded;
  return [
    [`${size} units: load`, `${events} events, COPY ${loadSeconds.toFixed(0)} s`, ''],
    [
      `${size} units: rebuild`,
      `${rebuildSeconds.toFixed(0)} s, ${Math.round(events / rebuildSeconds)} events/s`,
      '',
    ],
  ];
}

function growthRows(sizes: readonly SizeReport[]): string[][] {
  const base = sizes.find(({ units }) => units === 100_000);
  const last = sizes.at(-1);
  if (base === undefined || last === undefined || last === base) return [];
  const own = (size: SizeReport) => size.whereUsed.times['Reelkin, the statement']?.p50 ?? Number.NaN;
  return [
    [
      `where-used, ${last.units.toLocaleString('en')} against 100,000 units`,
      `${own(last).toFixed(2)} against ${own(base).toFixed(2)} ms`,
      ratio(own(last) / own(base), '≤ 1.3 at 5 M'),
    ],
  ];
}

function httpRows({ http }: BenchReport): string[][] {
  if (http === null) return [];
  return [
    [
      'append through HTTP, 1 client',
      `${ms(http.append)}; the use case ${ms(http.useCase)}; a request that does nothing ${ms(http.empty)}`,
      '',
    ],
    ['append through HTTP, 50 clients', `${Math.round(http.sharedRate)} events/s`, ''],
    [
      `CSV through HTTP, ${http.csv.rows} rows`,
      `${Math.round(http.csv.rowsPerSecond)} rows/s; server ${http.csv.idleMiB.toFixed(0)} MiB idle, ${http.csv.peakMiB.toFixed(0)} at most`,
      `+${(http.csv.peakMiB - http.csv.idleMiB).toFixed(0)} MiB (< 100)`,
    ],
  ];
}
