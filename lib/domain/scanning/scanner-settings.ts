import { z } from 'zod';

/** How the scanner of this device types. */
export const scannerSettingsSchema = z.object({
  /** What it types in front of every code; taken away. */
  prefix: z.string().max(8),
  /** What ends a scan; `pause` for a scanner that types nothing behind the code. */
  suffix: z.enum(['Enter', 'Tab', 'pause']),
  /** Keys that follow each other faster than this were typed by no hand. */
  gapMs: z.int().min(20).max(150),
});
export type ScannerSettings = z.infer<typeof scannerSettingsSchema>;

/** A scanner as it comes out of its box. Fast typists need 60 ms and more from key to key (common practice, no source). */
export const SCANNER_DEFAULT: ScannerSettings = { prefix: '', suffix: 'Enter', gapMs: 50 };

/** Settings as a device keeps them; the default for what it cannot have written. */
export function readScannerSettings(kept: string | null): ScannerSettings {
  if (kept === null) return SCANNER_DEFAULT;
  try {
    return scannerSettingsSchema.parse(JSON.parse(kept));
  } catch {
    return SCANNER_DEFAULT;
  }
}
