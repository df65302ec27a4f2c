import { z } from 'zod';

/** A timestamptz column that may be infinite, in microseconds since the epoch. */
export const openInstantColumn = z.custom<number>(
  (value) => typeof value === 'number' && !Number.isNaN(value),
  'Expected an instant.',
);
