import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';

/** Units that are put on hold in one go, at most. */
export const HOLD_BATCH_MAX = 10_000;
/** Units held with one call: a batch comes in several, so that whoever waits sees it go on. */
export const HOLD_CALL_MAX = 100;

/**
 * The id of the hold on a unit in a batch, a UUID v7 of the batch's own moment: however often the batch is sent, each
 * unit is held once.
 */
export function holdIdInBatch(batch: string, unit: string): string {
  const digest = bytesToHex(sha256(utf8ToBytes(`${batch} ${unit}`)));
  const variant = (8 + (Number.parseInt(digest.slice(3, 4), 16) % 4)).toString(16);
  return `${batch.slice(0, 13)}-7${digest.slice(0, 3)}-${variant}${digest.slice(4, 7)}-${digest.slice(7, 19)}`;
}

/** The moment of a batch, in milliseconds since 1970: that of its UUID v7. */
export function batchMoment(batch: string): number {
  return Number.parseInt(batch.replaceAll('-', '').slice(0, 12), 16);
}
