import type { GenealogyNode } from '@/lib/domain/genealogy/graph/genealogy-graph';
import { codeHref } from '@/lib/ui/code-href';
import { SPANS_MS, spanAround, timelineAddress } from '@/lib/ui/slot-timeline/timeline-address';
import { traceAddress } from '@/lib/ui/trace/trace-address';

/** Address of a node's page: its own; for a station its slots at that time, for a person the units processed. */
export function nodeHref(node: GenealogyNode): string | null {
  switch (node.kind) {
    case 'work':
      return node.station === null ? null : timelineAddress(node.station, around(node));
    case 'person':
      return traceAddress({ operator: node.code });
    default:
      return codeHref(node.kind, node.code);
  }
}

function around({ from, to }: GenealogyNode & { kind: 'work' }) {
  return spanAround({ fromMs: Date.parse(from), toMs: Date.parse(to) }, SPANS_MS.shift);
}
