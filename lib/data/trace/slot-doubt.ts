import { DOUBTS, type Doubt } from '@/lib/domain/genealogy/answer';

/** The bit of a reason in the statements' `doubt`. */
export function bitOf(doubt: Doubt): number {
  return 2 ** DOUBTS.indexOf(doubt);
}

/** The reasons that a `doubt` names; none named is that of the times. */
export function readDoubt(bits: number): Doubt[] {
  return DOUBTS.filter((doubt) => ((bits === 0 ? bitOf('clock') : bits) & bitOf(doubt)) !== 0);
}

/** SQL for the end of the grey zone that a mount (alias m) began, null where it began none. */
export const GREY_UNTIL = 'select case when m.is_spliced then read.grey_until(m.event) end as grey_until';

/**
 * SQL for why a pass (alias with at, low, high) that overlaps a stay in a slot (alias with from_at, to_at, grey_until)
 * may be without it: it came in the grey zone of a splice, or the work itself, without any doubt about its time, was
 * under way when the item came or went.
 */
export function slotDoubt(pass: string, stay: string): string {
  const begunAt = `${pass}.low + (${pass}.high - ${pass}.at)`;
  const crosses = (edge: string) => `${begunAt} < ${edge} and ${pass}.at >= ${edge}`;
  return `(case when ${pass}.low < ${stay}.grey_until then ${bitOf('splice')} else 0 end
           | case when ${crosses(`${stay}.from_at`)} or ${crosses(`${stay}.to_at`)} then ${bitOf('span')} else 0 end)`;
}
