import type { LabelKind } from '@/lib/domain/events/vocabulary';
import type { SymbolKind } from '@/lib/domain/labels/arrange-label';
import type { DrawnLabel, LabelProblem } from '@/lib/domain/labels/label-picture';
import type { LabelStock } from '@/lib/domain/labels/label-stock';
import { symbolPath } from '@/lib/domain/labels/symbol-path';
import { describeLabels } from '@/lib/server/labels/describe-labels';
import { makeLabel } from '@/lib/server/labels/make-label';

/** Labels as a page draws them, once each, with what was printed before; nothing is recorded. */
export async function previewLabels(order: {
  kind: LabelKind;
  codes: readonly string[];
  symbol: SymbolKind;
  stock: LabelStock;
}): Promise<{ labels: DrawnLabel[]; problems: LabelProblem[]; printedBefore: string[] }> {
  const subjects = await describeLabels(order.kind, order.codes);
  const made = subjects.map(({ code, details }) => makeLabel({ ...order, code, details }));
  return {
    labels: made.flatMap((each) =>
      each.ok
        ? [{ code: each.label.code, path: symbolPath(each.label.modules), arranged: each.label.arranged }]
        : [],
    ),
    problems: made.flatMap((each) => (each.ok ? [] : [each.problem])),
    printedBefore: subjects.filter(({ printed }) => printed > 0).map(({ code }) => code),
  };
}
