/** Every reason to refuse, in order of precedence; the words are in the message catalogue. */
export const REFUSAL_CODES = [
  'malformed',
  'event_id_reused',
  'time_in_future',
  'device_seq_reused',
  'not_permitted',
  'not_vouched',
  'unknown_station',
  'unknown_operator',
  'unknown_product',
  'unknown_unit',
  'unknown_item',
  'unknown_container',
  'unknown_slot',
  'unknown_hold',
  'unknown_exception',
  'serial_pattern_mismatch',
  'already_started',
  'already_received',
  'scrapped',
  'already_shipped',
  'already_packed',
  'inside_another_unit',
  'on_hold',
  'open_failure',
  'not_on_route',
  'wrong_step',
  'not_qualified',
  'slot_empty',
  'wrong_kind',
  'wrong_part',
  'retired',
  'not_in_slot',
  'splices_itself',
  'not_in_container',
  'not_inside',
  'already_inside',
  'would_contain_itself',
  'unfinished',
  'unsigned',
  'hold_already_released',
  'exception_already_cleared',
  'reprint_without_reason',
  'void_of_void',
] as const;

export type RefusalCode = (typeof REFUSAL_CODES)[number];

/** One reason with the facts that its words need. */
export type Refusal = { code: RefusalCode; [fact: string]: unknown };

/** Puts reasons in order of precedence, each distinct one once. */
export function inPrecedence(refusals: readonly Refusal[]): Refusal[] {
  const distinct = new Map(refusals.map((refusal) => [JSON.stringify(refusal), refusal]));
  return [...distinct.values()].sort((a, b) => REFUSAL_CODES.indexOf(a.code) - REFUSAL_CODES.indexOf(b.code));
}
