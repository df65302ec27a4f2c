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

/** What is drawn of a genealogy when the nodes named in `folded` hide everything behind them. */
export function visibleTree({ nodes, edges }: GenealogyAnswer, folded: ReadonlySet<string>): VisibleTree {
  const byId = new Map(nodes.map((node) => [node.id, node]));
  const [root] = nodes;
  if (root === undefined) throw new Error('A genealogy has its unit.');
  const grow = (side: 'upstream' | 'downstream') => {
    const lines = new Map<string, GenealogyEdge[]>();
    for (const edge of edges) {
      const near = side === 'upstream' ? edge.to : edge.from;
      lines.set(near, [...(lines.get(near) ?? []), edge]);
    }
    const farEnd = (edge: GenealogyEdge) => (side === 'upstream' ? edge.from : edge.to);
    const outwardOf = (id: string) =>
      (lines.get(id) ?? []).flatMap((edge) => {
        const node = byId.get(farEnd(edge));
        return node?.side === side ? [{ node, edge }] : [];
      });
    return growFrom(root, folded, outwardOf);
  };
  const upstream = grow('upstream');
  const downstream = grow('downstream');
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

type Outward = (id: string) => { node: GenealogyNode; edge: GenealogyEdge }[];

function growFrom(root: GenealogyNode, folded: ReadonlySet<string>, outwardOf: Outward): Branch {
  const branchOf = (node: GenealogyNode, edge: GenealogyEdge | null): Branch => ({
    node,
    edge,
    isFolded: folded.has(node.id),
    outward: outwardOf(node.id).map((each) => each.node),
    children: [],
  });
  const trunk = branchOf(root, null);
  const found = new Set([root.id]);
  for (let level = [trunk]; level.length > 0; ) {
    const next: Branch[] = [];
    for (const branch of level) {
      if (branch.isFolded) continue;
      for (const { node, edge } of outwardOf(branch.node.id)) {
        if (found.has(node.id)) continue;
        found.add(node.id);
        branch.children.push(branchOf(node, edge));
      }
      branch.children.sort((a, b) => compareNodes(a, b));
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
function compareNodes(a: Branch, b: Branch): number {
  return RANK[a.node.kind] - RANK[b.node.kind] || compareTexts(sortText(a), sortText(b));
}

function sortText({ node, edge }: Branch): string {
  if (node.kind === 'work') return new Date(node.from).toISOString();
  return `${edge?.slots[0] ?? '\uffff'} ${node.code}`;
}

function compareTexts(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
