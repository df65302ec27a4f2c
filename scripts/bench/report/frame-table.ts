import type { Frames } from '@/scripts/bench/measures/record-frames';
import type { FrameReport } from '@/scripts/bench/run-genealogy-frames';

/** A frame that took longer than this is seen as a stutter: two at 60 Hz. */
const SLOW_MS = 33.4;

/** The frames as a Markdown table, each picture beside the smallest one under the same gesture in the same run. */
export function frameTable(reports: readonly FrameReport[], version: string): string {
  const rows = reports.flatMap(({ nodes, throttle, gestures }) => {
    const small = reports.find((each) => each.throttle === throttle);
    return Object.entries(gestures).map(([gesture, frames]) => {
      const base = small?.gestures[gesture];
      return [`${nodes} nodes, ${throttle}x, ${gesture}`, ...cells(frames), ratio(frames, base)];
    });
  });
  return [
    `Chromium ${version}, headless, software rendering, 1024 x 768, on this machine's shared processor: no tablet.`,
    'What counts is the ratio to the picture of few nodes; "still" is what the machine itself does without any gesture.',
    '',
    '| picture, processor slowed, gesture | frames | p50 ms | p95 ms | worst ms | over 33 ms | long tasks (sum ms) | main thread busy ms | p95, worst, busy against few nodes |',
    '|---|---|---|---|---|---|---|---|---|',
    ...rows.map((row) => `| ${row.join(' | ')} |`),
    '',
  ].join('\n');
}

function cells(frames: Frames): string[] {
  const { p50, p95, worst, slowShare } = summary(frames);
  const longMs = frames.longTasksMs.reduce((sum, each) => sum + each, 0);
  return [
    String(frames.intervalsMs.length),
    p50.toFixed(1),
    p95.toFixed(1),
    worst.toFixed(1),
    `${(100 * slowShare).toFixed(1)} %`,
    `${frames.longTasksMs.length} (${longMs.toFixed(0)})`,
    frames.busyMs.toFixed(0),
  ];
}

function ratio(frames: Frames, base: Frames | undefined): string {
  if (base === undefined || base === frames) return '';
  const [own, other] = [summary(frames), summary(base)];
  const ratios = [own.p95 / other.p95, own.worst / other.worst, frames.busyMs / base.busyMs];
  return ratios.map((each) => each.toFixed(2)).join(', ');
}

function summary({ intervalsMs }: Frames) {
  const sorted = [...intervalsMs].sort((a, b) => a - b);
  const at = (share: number) => sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? 0;
  return {
    p50: at(0.5),
    p95: at(0.95),
    worst: at(1),
    slowShare: sorted.filter((each) => each > SLOW_MS).length / Math.max(1, sorted.length),
  };
}
