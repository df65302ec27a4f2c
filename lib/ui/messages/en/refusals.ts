import type { RefusalCode } from '@/lib/domain/gate/refusals';

/** The words of a refusal: what is wrong in two or three words, and one sentence with the facts and the way out. */
type RefusalWords = { title: string; text: string };

/**
 * Words for every refusal code. Besides its own facts a message may use `{subject}`, the unit or container that it is
 * about, and `{has_x, select, no {…} other {…}}`, which says whether the refusal carries the fact `x`.
 */
export const refusals: Record<RefusalCode, RefusalWords> = {
  malformed: { title: 'Not understood', text: 'Something in the entry is missing or not allowed: {errors}' },
  event_id_reused: {
    title: 'Already used',
    text: 'This entry was sent before with other content. Scan again to make a new one.',
  },
  time_in_future: {
    title: 'Clock is ahead',
    text: 'The time of this entry lies in the future. Set the clock of this device.',
  },
  device_seq_reused: {
    title: 'Number used before',
    text: 'Another entry has the number {deviceSeq} of device {device}: this tablet was restored from a copy. It takes a new name by itself and sends the entry again.',
  },
  not_vouched: {
    title: 'Badge not confirmed',
    text: 'Nothing shows that {operator} was signed in on the device that recorded this. Ask {operator}, then clear or undo it.',
  },
  not_permitted: {
    title: 'Not your role',
    text: 'Your role may not record this. Ask someone who may, or an administrator.',
  },
  unknown_station: {
    title: 'Unknown station',
    text: 'There is no station {station} in the plant. Check the code, or ask an administrator.',
  },
  unknown_operator: {
    title: 'Unknown badge',
    text: 'The plant does not know badge {operator}. Scan the badge again, or ask an administrator.',
  },
  unknown_product: {
    title: 'Unknown product',
    text: 'The plant has no product {product} of revision {revision}.',
  },
  unknown_unit: {
    title: 'Unknown unit',
    text: 'No unit {unit} was ever started. Scan it again, or start it first.',
  },
  unknown_item: {
    title: 'Unknown item',
    text: 'Item {item} was never received. Scan it again, or book it in at goods-in.',
  },
  unknown_container: {
    title: 'Unknown container',
    text: 'Nothing was ever packed into {container}. Scan it again.',
  },
  unknown_slot: { title: 'Unknown slot', text: 'Station {station} has no slot {slot}.' },
  unknown_hold: { title: 'Unknown hold', text: 'No event {hold} placed a hold.' },
  serial_pattern_mismatch: {
    title: 'Not a serial of this product',
    text: '{unit} does not look like a serial of this product ({expected}). Check the label and the product.',
  },
  already_started: { title: 'Already started', text: 'Unit {unit} was started before. Scan the next one.' },
  already_received: { title: 'Already received', text: 'Item {item} was booked in before.' },
  scrapped: { title: 'Scrapped', text: 'Unit {unit} is scrap. Take it out of the line.' },
  already_shipped: {
    title: 'Already shipped',
    text: '{subject} left with shipment {shipment}. It must be returned first.',
  },
  already_packed: {
    title: 'Already packed',
    text: 'Unit {unit} is in container {container}. Unpack it first.',
  },
  inside_another_unit: {
    title: 'Inside another unit',
    text: 'Unit {unit} is inside {outer}. Pack {outer} instead.',
  },
  on_hold: {
    title: 'On hold',
    text: '{kind, select, unit {Unit} item {Item} lot {Lot} container {Container} other {Something}} {id} is on hold: {reason}',
  },
  open_failure: {
    title: 'Failed and not passed again',
    text: 'Unit {unit} failed at {operation}. Repair it and take it to {operation} again.',
  },
  not_on_route: {
    title: 'Not on its route',
    text: 'The route of unit {unit} has no {operation}.{has_expected, select, no {} other { It goes to {expected} next.}}',
  },
  wrong_step: {
    title: 'Wrong step',
    text: 'Unit {unit} must pass {expected} (step {step}) before {operation}.',
  },
  not_qualified: {
    title: 'Not qualified',
    text: 'Badge {operator} is not qualified for {operation}. Someone who is must do it.',
  },
  slot_empty: {
    title: 'Slot is empty',
    text: 'Slot {slot} of {station} has nothing in it.{has_expected, select, no {} other { It needs {expected}.}}',
  },
  wrong_kind: {
    title: 'Wrong kind of item',
    text: '{item}: {kind}. Slot {slot} of {station} holds: {expected}.',
  },
  wrong_part: {
    title: 'Wrong part',
    text: '{has_position, select, yes {{item}, fitted at {position} of {unit}, is {has_part, select, no {of no known part} other {{part}}}; the BOM says {expected}. QA decides.} other {Slot {slot} of {station} needs {expected}; {item} holds {has_part, select, no {no known part} other {{part}}}. Take it out and stop the line.}}',
  },
  retired: { title: 'Retired', text: 'Item {item} is not to be used any more.' },
  not_in_slot: { title: 'Not in that slot', text: '{item} is not in slot {slot} of {station}.' },
  splices_itself: {
    title: 'One and the same reel',
    text: '{item} cannot be spliced to itself. Scan the new reel.',
  },
  not_in_container: {
    title: 'Not in that container',
    text: '{has_unit, select, no {{container} is not in {from}} other {Unit {unit} is not in {container}}}.',
  },
  not_inside: { title: 'Not inside that unit', text: 'Unit {unit} is not inside {from}.' },
  already_inside: {
    title: 'Already inside a unit',
    text: 'Unit {unit} is inside {outer}. Separate it first.',
  },
  would_contain_itself: {
    title: 'Goes into itself',
    text: '{subject} cannot go into {into}: it is around it.',
  },
  unfinished: {
    title: 'Not finished',
    text: 'Unit {unit} is not finished.{has_expected, select, no { It has no route to finish.} other { It goes to {expected} (step {step}) next.}}',
  },
  unsigned: {
    title: 'Not signed off',
    text: 'Unit {unit} has no QA sign-off. One from before a return has lapsed.',
  },
  unknown_exception: {
    title: 'No exception',
    text: 'Nothing is wrong with event {event}, or it was never recorded.',
  },
  exception_already_cleared: { title: 'Already cleared', text: 'This exception was cleared before.' },
  hold_already_released: { title: 'Already released', text: 'This hold was released before.' },
  reprint_without_reason: {
    title: 'Printed before',
    text: 'A label with {id} was printed before. Say why it is needed again, and take the old one away.',
  },
  void_of_void: { title: 'A void stays', text: 'An event that voids another cannot be voided.' },
};
