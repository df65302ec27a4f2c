import { describe, expect, it } from 'vitest';
import type {
  GenealogyAnswer,
  GenealogyEdge,
  GenealogyNode,
} from '@/lib/domain/genealogy/graph/genealogy-graph';
import { layOut, saysTheSame } from '@/lib/ui/genealogy/lay-out';
import { indexTree, visibleTree } from '@/lib/ui/genealogy/visible-tree';

const unit = (id: string, side: GenealogyNode['side']): GenealogyNode => ({
  id,
  side,
  more: [],
  kind: 'unit',
  code: id,
  product: null,
  revision: null,
  place: null,
  isFollowed: true,
});
const container = (id: string): GenealogyNode => ({
  id,
  side: 'downstream',
  more: [],
  kind: 'container',
  code: id,
});
const line = (from: string, to: string): GenealogyEdge => ({
  from,
  to,
  link: 'inside',
  relation: 'contains',
  certainty: 'certain',
  slots: [],
  positions: [],
});

/** U holds B and A, both of which hold X; it is packed in CT. */
const ANSWER: GenealogyAnswer = {
  unit: 'U',
  at: null,
  asOf: '2026-03-02T08:00:00Z',
  complete: true,
  owing: [],
  lost: [],
  nodes: [
    unit('U', 'root'),
    unit('B', 'upstream'),
    unit('A', 'upstream'),
    unit('X', 'upstream'),
    container('CT'),
  ],
  edges: [line('B', 'U'), line('A', 'U'), line('X', 'A'), line('X', 'B'), line('U', 'CT')],
  left: 0,
};

describe('the visible tree', () => {
  const index = indexTree(ANSWER);
  const laidOut = (folded: string[]) => layOut(visibleTree(index, new Set(folded)));
  const spotsOf = (folded: string[]) =>
    laidOut(folded).spots.map(({ id, side, depth, position, setSize }) => [
      id,
      side,
      depth,
      position,
      setSize,
    ]);

  it('has each node once, siblings in the order of their codes, and a line to where it is drawn already', () => {
    expect(spotsOf([])).toEqual([
      ['U', 'root', 0, 1, 1],
      ['A', 'upstream', 1, 1, 2],
      ['B', 'upstream', 1, 2, 2],
      ['X', 'upstream', 2, 1, 1],
      ['CT', 'downstream', 1, 1, 1],
    ]);
    expect(laidOut([]).lines.filter(({ isAgain }) => isAgain)).toHaveLength(1);
  });

  it('hangs what is folded away at one place under the next one', () => {
    expect(spotsOf(['A']).map(([id]) => id)).toContain('X');
    expect(spotsOf(['A', 'B']).map(([id]) => id)).toEqual(['U', 'A', 'B', 'CT']);
  });

  it('lets a node that only moved say the same, and one that was folded something else', () => {
    const [before, after] = [laidOut([]).byId, laidOut(['A', 'B']).byId];
    const isSame = (id: string) => {
      const [a, b] = [before.get(id), after.get(id)];
      return a !== undefined && b !== undefined && saysTheSame(a, b);
    };
    expect(isSame('CT')).toBe(true);
    expect(isSame('U')).toBe(true);
    expect(isSame('A')).toBe(false);
  });
});
