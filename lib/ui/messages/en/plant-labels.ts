/** What a scanned label is, where something else was to be scanned; and what a unit lacks, or has in it on hold. */
export const plantLabels = {
  badge: 'That is the badge {badge}. To change person, press Change person first.',
  station: 'That is the label of station {station}.',
  slot: 'That is slot {slot}{has_station, select, no {} other { of {station}}}.',
  missingInner: 'Not in it yet: {product} at {position}',
  emptyPosition: '{position} is empty: a part was removed and none was fitted.',
  heldInside:
    'Caution: {unit} contains {kind, select, lot {lot} other {item}} {id}, which is on hold: {reason} The unit itself is not held; ask QA.',
} as const;
