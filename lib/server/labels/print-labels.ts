import { v7 } from 'uuid';
import type { Refusal } from '@/lib/domain/gate/refusals';
import type { LabelOrder } from '@/lib/domain/labels/label-order';
import type { LabelPicture, LabelProblem } from '@/lib/domain/labels/label-picture';
import type { Principal } from '@/lib/domain/people/principal';
import { formatInstant } from '@/lib/domain/time';
import { appendEvents } from '@/lib/server/append-events';
import { describeLabels } from '@/lib/server/labels/describe-labels';
import { labelPdf } from '@/lib/server/labels/label-pdf';
import { makeLabel } from '@/lib/server/labels/make-label';
import { readPlant } from '@/lib/server/read-plant';

/** What became of an order. The PDF is null when the browser prints. */
export type PrintResult =
  | { ok: true; pdf: Buffer | null }
  | { ok: false; problems: LabelProblem[] }
  | { ok: false; refusals: Refusal[] };

/**
 * Prints labels: first all of them are drawn, then each code's printing is recorded, and only then the labels are
 * given out. Nothing is recorded when one cannot be drawn, or was printed before and no reason is given.
 */
export async function printLabels(order: LabelOrder, principal: Principal): Promise<PrintResult> {
  const { kind, codes, copies, symbol, stock, reason, skip } = order;
  const subjects = await describeLabels(kind, [...new Set(codes)]);
  const problems: LabelProblem[] = [];
  const labels: LabelPicture[] = [];
  for (const { code, details } of subjects) {
    const made = makeLabel({ code, details, symbol, stock });
    if (!made.ok) problems.push(made.problem);
    else labels.push(...Array.from({ length: copies }, () => made.label));
  }
  if (problems.length > 0) return { ok: false, problems };

  const reprints = subjects.filter(({ printed }) => printed > 0);
  if (reason === undefined && reprints.length > 0)
    return {
      ok: false,
      refusals: reprints.map(({ code }) => ({ code: 'reprint_without_reason', kind, id: code })),
    };
  const plant = await readPlant();
  const operator = principal.kind === 'person' && plant.operator(principal.badge) !== null;
  const events = subjects.map(({ code }) => ({
    id: v7(),
    type: 'label.printed',
    at: formatInstant(Date.now() * 1000),
    gate: 'enforce',
    ...(operator && { operator: principal.badge }),
    body: { target: { kind, id: code }, copies, ...(reason !== undefined && { reason }) },
  }));
  const refusals = (await appendEvents(events, principal)).flatMap(({ refusal }) => refusal ?? []);
  if (refusals.length > 0) return { ok: false, refusals };
  const pdf = order.as === 'pdf' ? await labelPdf({ title: titleOf(codes), stock, labels, skip }) : null;
  return { ok: true, pdf };
}

function titleOf(codes: readonly string[]): string {
  const [first = '', ...others] = codes;
  return others.length === 0 ? first : `${first} +${others.length}`;
}
