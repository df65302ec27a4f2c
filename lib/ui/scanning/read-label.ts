import { isWholeSerial } from '@/lib/domain/plant/serial-pattern';
import { readPayload, type Scanned } from '@/lib/domain/scanning/read-payload';

/** Reads a payload by the plant's serial patterns. A module of its own: a station loads it with its first label. */
export function readLabel(payload: string, patterns: readonly string[]): Scanned {
  return readPayload(payload, (text) => patterns.some((pattern) => isWholeSerial(pattern, text)));
}
