import type { Refusal } from '@/lib/domain/gate/refusals';

/** What is unknown or scrap is so whatever else is said of it; further reasons would only mislead. */
export function reasonsToShow(reasons: readonly Refusal[]): Refusal[] {
  const final = reasons.filter(({ code }) => code === 'unknown_unit' || code === 'scrapped');
  return final.length > 0 ? final.slice(0, 1) : [...reasons];
}
