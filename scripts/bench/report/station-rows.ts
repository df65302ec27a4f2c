import type { StationReport } from '@/scripts/bench/measures/station/measure-station';
import type { Timing } from '@/scripts/bench/report/percentiles';

const ms = ({ p50, p95 }: Timing) => `${p50.toFixed(1)} / ${p95.toFixed(1)} ms`;
const mib = (bytes: number) => `${(bytes / 2 ** 20).toFixed(1)} MiB`;
const seconds = (valueMs: number) => `${(valueMs / 1000).toFixed(1)} s`;

/** What a station's page reached: each measure, its time or size, and what it must reach. */
export function stationRows(report: StationReport): string[][] {
  const { slower, firstLoadBytes, replica, checked, scans } = report;
  const { check, firstCheck, bareRead, bareRequest } = checked;
  const page = `station, ${slower} times slower`;
  const { units, left, wholeAfter, blocked } = replica;
  return [
    ['station, first load', `${firstLoadBytes} bytes of gzip JavaScript`, '(< 256,000)'],
    [
      `${page}: replica of ${units.toLocaleString('en')} units, ${left.toLocaleString('en')} more left out`,
      `whole after ${seconds(wholeAfter)}; ${mib(replica.answerBytes)} of JSON, ${mib(replica.diskBytes)} on disk, ${mib(replica.heapBytes)} of memory`,
      `page blocked ${blocked.longest.toFixed(0)} ms at a time at most, ${blocked.total.toFixed(0)} ms in all`,
    ],
    [
      `${page}: check by the replica`,
      `${ms(check)}; the first ${firstCheck.toFixed(0)} ms; a bare read of the unit ${ms(bareRead)}`,
      `${(check.p50 / bareRead.p50).toFixed(1)} of a bare read (p95 < 50 ms)`,
    ],
    [`${page}: a request that does nothing`, ms(bareRequest), ''],
    ...Object.entries(scans).map(([name, { painted, inserted, waited, first }]) => [
      `${page}: scan to verdict, ${name}`,
      `${ms(painted)}; the first ${first.toFixed(0)} ms; in the document ${ms(inserted)}; the key waited ${ms(waited)}`,
      '(p95 < 100 ms)',
    ]),
  ];
}
