import type { Loaded } from '@/scripts/bench/history-database';
import type { AppendRate } from '@/scripts/bench/measures/append-events';
import type { HttpReport } from '@/scripts/bench/measures/http';
import type { LateMount } from '@/scripts/bench/measures/late-mount';
import type { Storage } from '@/scripts/bench/measures/storage';
import type { CsvStream } from '@/scripts/bench/measures/stream-csv';
import type { WhereUsedTimes } from '@/scripts/bench/measures/where-used';
import type { Timing } from '@/scripts/bench/report/percentiles';

/** What was measured at one number of units. */
export type SizeReport = {
  units: number;
  loaded: Loaded;
  whereUsed: WhereUsedTimes;
  asBuilt: Record<string, Timing>;
  storage: Storage;
  csv: CsvStream;
  lateMounts: LateMount[];
};

/** One run of the benchmark; times in milliseconds, storage in bytes a unit, rates a second. */
export type BenchReport = {
  at: string;
  machine: Record<string, string>;
  append: AppendRate[];
  sizes: SizeReport[];
  http: HttpReport | null;
};
