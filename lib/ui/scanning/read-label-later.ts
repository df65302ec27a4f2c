import { hasControlCharacter } from '@/lib/domain/scanning/control-characters';
import type { Scanned } from '@/lib/domain/scanning/read-payload';

/** Loads what reads labels, and reads one. Where it cannot be loaded, what looks like a bare code is taken as one. */
export async function readLabelLater(payload: string, patterns: readonly string[]): Promise<Scanned> {
  try {
    const { readLabel } = await import('@/lib/ui/scanning/read-label');
    return readLabel(payload, patterns);
  } catch {
    if (hasControlCharacter(payload)) return { ok: false, fault: 'unreadable' };
    return { ok: true, code: payload, facts: null, warnings: [] };
  }
}
