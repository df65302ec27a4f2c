/** What a scanned label is, where something else was to be scanned. */
export const labels = {
  badge: 'That is the badge {badge}. To change person, press Change person first.',
  station: 'That is the label of station {station}.',
  slot: 'That is slot {slot}{has_station, select, no {} other { of {station}}}.',
} as const;
