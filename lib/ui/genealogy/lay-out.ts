import { type HierarchyPointNode, hierarchy, tree } from 'd3-hierarchy';
import type { GenealogyEdge } from '@/lib/domain/genealogy/graph/genealogy-graph';
import type { Branch, VisibleTree } from '@/lib/ui/genealogy/visible-tree';

/** Size of a node and the room between nodes, in pixels at scale 1. */
export const NODE = { width: 264, height: 60, gapX: 64, gapY: 8 } as const;

/** A node at its place: `x`, `y` are its middle, the unit's being 0, 0. */
export type Spot = {
  branch: Branch;
  id: string;
  parent: string | null;
  side: 'upstream' | 'root' | 'downstream';
  depth: number;
  /** Place among its siblings, from 1, and their number. */
  position: number;
  setSize: number;
  x: number;
  y: number;
};

/** A line between two nodes, from `near` (the unit's side) to `far`. */
export type Line = { edge: GenealogyEdge; isAgain: boolean; near: Spot; far: Spot };

export type Layout = { spots: Spot[]; byId: Map<string, Spot>; lines: Line[]; box: Box };
export type Box = { x0: number; y0: number; x1: number; y1: number };

/** Places the nodes: what went in to the left, what it went into to the right; linear in their number. */
export function layOut({ upstream, downstream, again }: VisibleTree): Layout {
  const left = sideSpots(upstream, 'upstream');
  const right = sideSpots(downstream, 'downstream').slice(1);
  const spots = [...left, ...right];
  const byId = new Map(spots.map((spot) => [spot.id, spot]));
  const lineOf = (edge: GenealogyEdge, isAgain: boolean): Line[] => {
    const [from, to] = [byId.get(edge.from), byId.get(edge.to)];
    if (from === undefined || to === undefined) return [];
    return [
      from.side === 'upstream'
        ? { edge, isAgain, near: to, far: from }
        : { edge, isAgain, near: from, far: to },
    ];
  };
  const lines = [
    ...again.flatMap((edge) => lineOf(edge, true)),
    ...spots.flatMap(({ branch }) => (branch.edge === null ? [] : lineOf(branch.edge, false))),
  ];
  return { spots, byId, lines, box: boxOf(spots) };
}

function sideSpots(trunk: Branch, side: 'upstream' | 'downstream'): Spot[] {
  const { width, height, gapX, gapY } = NODE;
  const root = tree<Branch>()
    .nodeSize([height + gapY, width + gapX])
    .separation((a, b) => (a.parent === b.parent ? 1 : 1.4))(hierarchy(trunk));
  const places = new Map<HierarchyPointNode<Branch>, number>();
  for (const { children = [] } of root.descendants())
    for (const [index, child] of children.entries()) places.set(child, index + 1);
  const spotOf = (point: HierarchyPointNode<Branch>): Spot => {
    const siblings = point.parent?.children ?? [point];
    return {
      branch: point.data,
      id: point.data.node.id,
      parent: point.parent?.data.node.id ?? null,
      side: point.parent === null ? 'root' : side,
      depth: point.depth,
      position: places.get(point) ?? 1,
      setSize: siblings.length,
      x: side === 'upstream' ? -point.y : point.y,
      y: point.x,
    };
  };
  return root.descendants().map(spotOf);
}

/** The smallest box around nodes. */
function boxOf(spots: readonly Spot[]): Box {
  const box = { x0: 0, y0: 0, x1: 0, y1: 0 };
  for (const { x, y } of spots) {
    box.x0 = Math.min(box.x0, x - NODE.width / 2);
    box.x1 = Math.max(box.x1, x + NODE.width / 2);
    box.y0 = Math.min(box.y0, y - NODE.height / 2);
    box.y1 = Math.max(box.y1, y + NODE.height / 2);
  }
  return box;
}

/** Whether a node is, even in part, inside a box. */
export function isIn({ x, y }: Spot, box: Box): boolean {
  return (
    x + NODE.width / 2 >= box.x0 &&
    x - NODE.width / 2 <= box.x1 &&
    y + NODE.height / 2 >= box.y0 &&
    y - NODE.height / 2 <= box.y1
  );
}

/** Whether the curve of a line can be seen inside a box. */
export function crosses({ near, far }: Line, box: Box): boolean {
  return (
    Math.max(near.x, far.x) >= box.x0 &&
    Math.min(near.x, far.x) <= box.x1 &&
    Math.max(near.y, far.y) >= box.y0 &&
    Math.min(near.y, far.y) <= box.y1
  );
}

/** The curve of a line as a path of SVG. */
export function curveOf({ near, far }: Line): string {
  const outward = far.x < near.x ? -1 : 1;
  const from = near.x + (outward * NODE.width) / 2;
  const to = far.x - (outward * NODE.width) / 2;
  const middle = (from + to) / 2;
  return `M${from} ${near.y}C${middle} ${near.y} ${middle} ${far.y} ${to} ${far.y}`;
}

/** The node that an arrow key leads to from a node; null where there is none. */
export function neighbour(layout: Layout, from: Spot, key: 'left' | 'right' | 'up' | 'down'): Spot | null {
  if (key === 'up' || key === 'down') {
    const sign = key === 'up' ? -1 : 1;
    const column = layout.spots.filter((spot) => spot.x === from.x && sign * (spot.y - from.y) > 0);
    return nearestTo(column, from.y);
  }
  const isOutward = from.side === 'root' || (from.side === 'upstream') === (key === 'left');
  if (!isOutward) return from.parent === null ? null : (layout.byId.get(from.parent) ?? null);
  const side = key === 'left' ? 'upstream' : 'downstream';
  return nearestTo(
    layout.spots.filter((spot) => spot.parent === from.id && spot.side === side),
    from.y,
  );
}

function nearestTo(spots: readonly Spot[], y: number): Spot | null {
  return spots.reduce<Spot | null>(
    (best, spot) => (best === null || Math.abs(spot.y - y) < Math.abs(best.y - y) ? spot : best),
    null,
  );
}

/** Whether a node says the same at two places. */
export function saysTheSame(a: Spot, b: Spot): boolean {
  return (
    a.branch.node === b.branch.node &&
    a.branch.edge === b.branch.edge &&
    a.branch.isFolded === b.branch.isFolded &&
    a.branch.outward === b.branch.outward &&
    a.side === b.side &&
    a.depth === b.depth &&
    a.position === b.position &&
    a.setSize === b.setSize
  );
}

/** The box that a node's card fills. */
export function boxOfSpot({ x, y }: Spot): Box {
  return {
    x0: x - NODE.width / 2,
    y0: y - NODE.height / 2,
    x1: x + NODE.width / 2,
    y1: y + NODE.height / 2,
  };
}
