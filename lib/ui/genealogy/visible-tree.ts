import type {
  GenealogyAnswer,
  GenealogyEdge,
  GenealogyNode,
} from '@/lib/domain/genealogy/graph/genealogy-graph';

/** A node as it is drawn: under the neighbour through which it is nearest to the unit. */
export type Branch = {
  node: GenealogyNode;
  /** The line to the neighbour that it hangs on; null for the unit itself. */
  edge: GenealogyEdge | null;
  isFolded: boolean;
  /** What hangs on it directly and is not drawn elsewhere: without any there is nothing to fold. */
  outward: readonly GenealogyNode[];
  children: Branch[];
};

/** Both sides of the unit as trees with the same root, and the lines between nodes that are drawn already. */
export type VisibleTree = { upstream: Branch; downstream: Branch; again: GenealogyEdge[] };

/** What hangs on each node, away from the unit, in the order in which it is drawn; made once for an answer. */
export type TreeIndex = {
  root: GenealogyNode;
  edges: readonly GenealogyEdge[];
  byId: ReadonlyMap<string, GenealogyNode>;
  upstream: Outward;
  downstream: Outward;
};

type Hanging = { node: GenealogyNode; edge: GenealogyEdge };
type Outward = ReadonlyMap<string, { links: readonly Hanging[]; nodes: readonly GenealogyNode[] }>;

/** Both directions of a genealogy, ready to be unfolded; linear in its nodes and lines but for the sorting. */
export function indexTree({ nodes, edges }: GenealogyAnswer): TreeIndex {
  const byId = new Map(nodes.map((node) => [node.id, node]));
  const [root] = nodes;
  if (root === undefined) throw new Error('A genealogy has its unit.');
  const outward = (side: 'upstream' | 'downstream'): Outward => {
    const found = new Map<string, (Hanging & { key: string })[]>();
    for (const edge of edges) {
      const [near, far] = side === 'upstream' ? [edge.to, edge.from] : [edge.from, edge.to];
      const node = byId.get(far);
      if (node?.side !== side) continue;
      const links = found.get(near) ?? [];
      found.set(near, links);
      links.push({ node, edge, key: sortText(node, edge) });
    }
    return new Map(
      [...found].map(([id, links]) => {
        links.sort((a, b) => RANK[a.node.kind] - RANK[b.node.kind] || compareTexts(a.key, b.key));
        return [id, { links, nodes: links.map(({ node }) => node) }];
      }),
    );
  };
  return { root, edges, byId, upstream: outward('upstream'), downstream: outward('downstream') };
}

/** What is drawn of a genealogy when the nodes named in `folded` hide everything behind them. */
export function visibleTree(index: TreeIndex, folded: ReadonlySet<string>): VisibleTree {
  const { root, edges, byId } = index;
  const upstream = growFrom(root, folded, index.upstream);
  const downstream = growFrom(root, folded, index.downstream);
  const drawn = new Set<GenealogyEdge | null>();
  const visible = new Set<string>();
  for (const branch of [...flat(upstream), ...flat(downstream)]) {
    drawn.add(branch.edge);
    visible.add(branch.node.id);
  }
  const again = edges.filter((edge) => {
    if (drawn.has(edge) || !visible.has(edge.from) || !visible.has(edge.to)) return false;
    return !folded.has(byId.get(edge.from)?.side === 'upstream' ? edge.to : edge.from);
  });
  return { upstream, downstream, again };
}

/** A tree's branches, the root first, each before what hangs on it. */
function flat(branch: Branch): Branch[] {
  return [branch, ...branch.children.flatMap(flat)];
}

const NOTHING: readonly never[] = [];

function growFrom(root: GenealogyNode, folded: ReadonlySet<string>, outward: Outward): Branch {
  const branchOf = (node: GenealogyNode, edge: GenealogyEdge | null): Branch => ({
    node,
    edge,
    isFolded: folded.has(node.id),
    outward: outward.get(node.id)?.nodes ?? NOTHING,
    children: [],
  });
  const trunk = branchOf(root, null);
  const found = new Set([root.id]);
  for (let level = [trunk]; level.length > 0; ) {
    const next: Branch[] = [];
    for (const branch of level) {
      if (branch.isFolded) continue;
      for (const { node, edge } of outward.get(branch.node.id)?.links ?? NOTHING) {
        if (found.has(node.id)) continue;
        found.add(node.id);
        branch.children.push(branchOf(node, edge));
      }
      next.push(...branch.children);
    }
    level = next;
  }
  return trunk;
}

const RANK: Record<GenealogyNode['kind'], number> = {
  person: 0,
  work: 1,
  item: 2,
  unit: 3,
  container: 4,
  shipment: 5,
};

/** Stations in the order of the work, items in the order of their slots, everything else by code. */
function sortText(node: GenealogyNode, edge: GenealogyEdge): string {
  if (node.kind === 'work') return new Date(node.from).toISOString();
  return `${edge.slots[0] ?? '\uffff'} ${node.code}`;
}

function compareTexts(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
