import { countKinds } from '@/lib/domain/genealogy/graph/count-kinds';
import type { GenealogyGraph, GenealogyNode } from '@/lib/domain/genealogy/graph/genealogy-graph';

const LEAVES: ReadonlySet<GenealogyNode['kind']> = new Set(['item', 'person']);

/**
 * The nodes nearest to the first one, at most `limit` of them, units and stations before the items and people of the
 * same distance. Every neighbour that had to go is counted at the node that stays; `left` is how many went in all.
 */
export function limitNodes(
  { nodes, edges }: GenealogyGraph,
  limit: number,
): GenealogyGraph & { left: number } {
  const neighbours = new Map<string, string[]>(nodes.map(({ id }) => [id, []]));
  for (const { from, to } of edges) {
    neighbours.get(from)?.push(to);
    neighbours.get(to)?.push(from);
  }
  const byId = new Map(nodes.map((node) => [node.id, node]));
  const kept = new Map<string, GenealogyNode>();
  for (const id of nearestFirst(nodes, neighbours, byId)) {
    if (kept.size >= limit) break;
    const node = byId.get(id);
    if (node !== undefined) kept.set(id, node);
  }
  return {
    nodes: [...kept.values()].map((node) => {
      const gone = (neighbours.get(node.id) ?? []).flatMap((id) =>
        kept.has(id) ? [] : (byId.get(id) ?? []),
      );
      return { ...node, more: countKinds(gone) };
    }),
    edges: edges.filter(({ from, to }) => kept.has(from) && kept.has(to)),
    left: nodes.length - kept.size,
  };
}

function nearestFirst(
  nodes: readonly GenealogyNode[],
  neighbours: ReadonlyMap<string, string[]>,
  byId: ReadonlyMap<string, GenealogyNode>,
): Set<string> {
  const isLeaf = (id: string) => Number(LEAVES.has(byId.get(id)?.kind ?? 'unit'));
  const found = new Set(nodes.slice(0, 1).map(({ id }) => id));
  for (let level = [...found]; level.length > 0; ) {
    const next = new Set(level.flatMap((id) => neighbours.get(id) ?? []).filter((id) => !found.has(id)));
    level = [...next].sort((a, b) => isLeaf(a) - isLeaf(b));
    for (const id of level) found.add(id);
  }
  return found;
}
