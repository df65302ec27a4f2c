import type { GenealogyNode, LeftOutKind } from '@/lib/domain/genealogy/graph/genealogy-graph';

/** Nodes counted by what they are, the most frequent kind first. */
export function countKinds(nodes: readonly GenealogyNode[]): { kind: LeftOutKind; count: number }[] {
  const counts = new Map<LeftOutKind, number>();
  for (const node of nodes) {
    const kind = node.kind === 'item' ? (node.itemKind ?? 'item') : node.kind;
    counts.set(kind, (counts.get(kind) ?? 0) + 1);
  }
  return [...counts].map(([kind, count]) => ({ kind, count })).sort((a, b) => b.count - a.count);
}
