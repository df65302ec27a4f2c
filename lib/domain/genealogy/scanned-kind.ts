/** What a scanned code can be, in the order in which it is offered. */
export const SCANNED_KINDS = [
  'unit',
  'item',
  'lot',
  'part',
  'container',
  'shipment',
  'panel',
  'order',
  'station',
  'operator',
] as const;

export type ScannedKind = (typeof SCANNED_KINDS)[number];
