import { parseArgs } from 'node:util';
import { z } from 'zod';
import { LOGGED_UNITS_MAX } from '@/scripts/bench/line/copy-history';

const schema = z.object({
  units: z.coerce
    .number()
    .int()
    .min(1000)
    .max(9 * LOGGED_UNITS_MAX)
    .refine((units) => units <= LOGGED_UNITS_MAX || units % LOGGED_UNITS_MAX === 0, {
      error: 'Beyond a million units, give whole millions.',
    })
    .default(100_000),
  out: z.string().default('.reelkin/bench/report'),
  data: z.string().default('.reelkin/bench/data'),
  http: z.boolean().default(true),
  station: z.boolean().default(false),
  again: z.boolean().default(false),
});

/**
 * What `npm run bench` is asked for: `--units`, `--out`, `--data`, `--no-http` where there is no build, `--again` for the
 * databases that an earlier run has made, and `--station` for a station's page alone.
 */
export type BenchOptions = z.infer<typeof schema>;

export function readOptions(args: string[]): BenchOptions {
  const { values } = parseArgs({
    args,
    allowNegative: true,
    options: {
      units: { type: 'string' },
      out: { type: 'string' },
      data: { type: 'string' },
      http: { type: 'boolean' },
      station: { type: 'boolean' },
      again: { type: 'boolean' },
    },
  });
  return schema.parse(values);
}

/** Sizes to measure at, the smallest first, ending with the one that was asked for. */
export function sizesUpTo(units: number): number[] {
  return [10_000, 100_000, 1_000_000].filter((size) => size < units).concat(units);
}
