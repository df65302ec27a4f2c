/** One line of a bill of materials; with `station` and `slot` it is drawn from that slot (wire.md, Plant). */
export type BomLine = {
  part?: string;
  product?: string;
  positions: string[];
  station?: string;
  slot?: string;
};

/** One product at one revision, with its route and bill of materials (wire.md, Plant). */
export type PlantProduct = {
  number: string;
  revision: string;
  serialPattern?: string;
  route: { step: number; operation: string; attempts?: number; sample?: number }[];
  bom: BomLine[];
};

/** The plant file as the model reads it: a whole document, every list present (wire.md, Plant). */
export type PlantFile = {
  site: { code: string; name: string; timeZone: string };
  parts: { number: string; description?: string; floorLife?: string; attrition?: number }[];
  stations: {
    code: string;
    line: string;
    operation: string;
    slots: { name: string; holds: string }[];
    scannedBy?: string[];
  }[];
  products: PlantProduct[];
  operators: { badge: string; name: string; operations: string[] }[];
};

type Envelope<Type extends string, Body> = {
  id: string;
  type: Type;
  at: string;
  station?: string;
  operator?: string;
  device?: string;
  deviceSeq?: number;
  uncertaintyMs?: number;
  gate?: 'enforce' | 'record';
  body: Body;
};

type Processed = {
  unit: string;
  result: 'pass' | 'fail';
  startedAt?: string;
  used?: { item: string; positions?: string[]; quantity?: number }[];
  readings?: { name: string; value: number; unit?: string; low?: number; high?: number }[];
  defects?: { code: string; position?: string; note?: string }[];
};
type Started = {
  unit: string;
  product: string;
  revision: string;
  order?: string;
  boardLot?: string;
  panel?: string;
  panelPosition?: string;
};
type Installed =
  | { unit: string; position: string; item: string }
  | { unit: string; position: string; fromUnit: string; fromPosition: string };
type Received = {
  item: string;
  kind: string;
  part?: string;
  lot?: string;
  supplier?: string;
  quantity?: number;
};
type Target = { kind: 'unit' | 'item' | 'lot' | 'container'; id: string };

/** The events of wire.md, "Events", told apart by `type`. */
export type WireEvent =
  | Envelope<'unit.started', Started>
  | Envelope<'unit.processed', Processed>
  | Envelope<'unit.signed', { unit: string; meaning: string }>
  | Envelope<'unit.joined', { unit: string; into: string; position: string }>
  | Envelope<'unit.separated', { unit: string; from: string }>
  | Envelope<'part.removed', { unit: string; position: string; reason?: string }>
  | Envelope<'part.installed', Installed>
  | Envelope<'unit.scrapped', { unit: string; reason: string }>
  | Envelope<'unit.packed' | 'unit.unpacked', { unit: string; container: string }>
  | Envelope<'container.nested', { container: string; into: string }>
  | Envelope<'container.unnested', { container: string; from: string }>
  | Envelope<
      'container.shipped',
      { container: string; shipment: string; customer: string; destination?: string }
    >
  | Envelope<'unit.returned', { unit: string; customer?: string; reference?: string; symptom?: string }>
  | Envelope<'hold.placed', { target: Target; reason: string }>
  | Envelope<'hold.released', { hold: string; disposition: string; reason: string }>
  | Envelope<'item.received', Received>
  | Envelope<'item.counted', { item: string; quantity: number; method: string }>
  | Envelope<'item.mounted', { item: string; slot: string }>
  | Envelope<'item.unmounted', { item: string; slot: string; left?: number }>
  | Envelope<'item.spliced', { from: string; to: string; slot: string; greyUnits?: number }>
  | Envelope<'item.inspected', { item: string; result: string }>
  | Envelope<'item.retired', { item: string; reason: string; left?: number }>
  | Envelope<'exception.cleared', { event: string; reason: string }>
  | Envelope<'device.retired', { device: string; reason: string }>
  | Envelope<
      'label.printed',
      {
        target: { kind: 'unit' | 'item' | 'container' | 'badge'; id: string };
        copies: number;
        reason?: string;
      }
    >
  | Envelope<'event.voided', { event: string; reason: string }>;

/** The event whose `type` is (or may be) `Type`. */
export type EventOf<Type extends WireEvent['type']> = WireEvent & { type: Type };
