import { NARROW_DOUBTS, type NarrowDoubt } from '@/lib/domain/genealogy/narrow-answer';

/** The bit of a reason for doubt; where-used's reasons come first and have the same bits there. */
export function narrowBitOf(doubt: NarrowDoubt): number {
  return 1 << NARROW_DOUBTS.indexOf(doubt);
}

/** The reasons that the bits name. */
export function readNarrowDoubt(bits: number): NarrowDoubt[] {
  return NARROW_DOUBTS.filter((doubt) => (bits & narrowBitOf(doubt)) !== 0);
}
