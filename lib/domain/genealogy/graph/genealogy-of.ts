import type { GenealogyGraph } from '@/lib/domain/genealogy/graph/genealogy-graph';
import { GraphDraft, type Ledger } from '@/lib/domain/genealogy/graph/graph-draft';
import { traceDownstream } from '@/lib/domain/genealogy/graph/trace-downstream';
import { traceUpstream } from '@/lib/domain/genealogy/graph/trace-upstream';
import { ALWAYS } from '@/lib/domain/genealogy/graph/unit-facts';

/**
 * A unit's genealogy, the unit itself first. An item is upstream exactly when its where-used answer has the unit.
 * `unread` are the units in it whose records were not there: with them it may grow.
 */
export function genealogyOf(ledger: Ledger, unit: string): GenealogyGraph & { unread: string[] } {
  const draft = new GraphDraft(ledger);
  const root = { ...draft.unit('root', unit), unit, path: [unit] };
  traceUpstream(draft, root, ALWAYS);
  traceDownstream(draft, root, { during: ALWAYS, part: null });
  return { ...draft.graph, unread: [...draft.unread] };
}
