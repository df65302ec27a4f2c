import { REFUSAL_CODES, type RefusalCode } from '@/lib/domain/gate/refusals';

/** A word of an automatic hold's reason. */
export type AutomaticReason = RefusalCode | 'attempts_exhausted';

/**
 * The reason of a hold in words: an automatic hold names the codes of what was wrong, with commas; every other reason
 * stands as a person wrote it.
 */
export function holdReasonWords(reason: string, wordsOf: (code: AutomaticReason) => string): string {
  const codes = reason.split(', ');
  return codes.every(isCode) ? codes.map(wordsOf).join(', ') : reason;
}

function isCode(word: string): word is AutomaticReason {
  return word === 'attempts_exhausted' || REFUSAL_CODES.some((code) => code === word);
}
