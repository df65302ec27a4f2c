import type { ScannedKind } from '@/lib/domain/genealogy/scanned-kind';
import { codeHref } from '@/lib/ui/code-href';
import { narrowAddress } from '@/lib/ui/narrow/narrow-address';
import { traceAddress } from '@/lib/ui/trace/trace-address';

/** Where a code of a kind leads: to its own page, or to its where-used answer. */
export function scannedAddress(kind: ScannedKind, code: string): string {
  switch (kind) {
    case 'unit':
    case 'container':
    case 'shipment':
      return codeHref(kind, code) ?? '/trace';
    case 'item':
    case 'lot':
    case 'part':
    case 'station':
    case 'operator':
      return traceAddress({ [kind]: code });
    case 'panel':
    case 'order':
      return narrowAddress([{ must: true, kind: 'started', [kind]: code }]);
    default:
      return kind satisfies never;
  }
}
