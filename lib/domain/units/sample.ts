import { sha256 } from '@noble/hashes/sha2.js';
import { utf8ToBytes } from '@noble/hashes/utils.js';
import type { RouteStep } from '@/lib/domain/plant/plant-file';

/**
 * Whether a unit owes a sampled step. The serial decides through SHA-256, so tablet, server and rebuild agree and
 * nobody at the line can choose; the share of picked units tends to `sample`.
 */
export function isPicked(
  unit: string,
  product: { number: string; revision: string },
  step: RouteStep,
): boolean {
  if (step.sample === undefined) return true;
  const digest = sha256(utf8ToBytes(JSON.stringify([product.number, product.revision, step.step, unit])));
  const [a = 0, b = 0, c = 0, d = 0] = digest;
  return (((a * 256 + b) * 256 + c) * 256 + d) / 2 ** 32 < step.sample;
}
