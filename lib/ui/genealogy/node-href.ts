import type { GenealogyNode } from '@/lib/domain/genealogy/graph/genealogy-graph';
import { codeHref } from '@/lib/ui/code-href';
import { traceAddress } from '@/lib/ui/trace/trace-address';

/** Address of a node's page: its own, or for a station and a person the units that have to do with them. */
export function nodeHref(node: GenealogyNode): string | null {
  switch (node.kind) {
    case 'work':
      return node.station === null ? null : traceAddress({ station: node.station });
    case 'person':
      return traceAddress({ operator: node.code });
    default:
      return codeHref(node.kind, node.code);
  }
}
