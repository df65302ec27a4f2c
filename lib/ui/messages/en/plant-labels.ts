/** What a scanned label is, where something else was to be scanned; and what is on hold inside a unit. */
export const plantLabels = {
  badge: 'That is the badge {badge}. To change person, press Change person first.',
  station: 'That is the label of station {station}.',
  slot: 'That is slot {slot}{has_station, select, no {} other { of {station}}}.',
  heldInside:
    'Caution: {unit} contains {kind, select, lot {lot} other {item}} {id}, which is on hold: {reason} The unit itself is not held; ask QA.',
} as const;
