import type { GenealogyAnswer } from '@/lib/domain/genealogy/graph/genealogy-graph';

/** Up to this many nodes are shown unfolded at first. */
const UNFOLDED_MAX = 40;

/** The nodes that are folded when everything is: every station and every unit but the one that was asked for. */
export function allFolded({ nodes }: GenealogyAnswer): Set<string> {
  return new Set(
    nodes.flatMap(({ id, kind, side }) =>
      kind === 'work' || (kind === 'unit' && side === 'upstream') ? [id] : [],
    ),
  );
}

/** What is folded when the picture opens: nothing while it is small. */
export function startFolded(answer: GenealogyAnswer): Set<string> {
  return answer.nodes.length <= UNFOLDED_MAX ? new Set() : allFolded(answer);
}
