import type { RecordedEvent } from '@/lib/domain/events/recorded-event';
import type { ItemHold } from '@/lib/domain/items/item-record';

/** A unit in a container; `container` is the one that it is in directly. */
export type PackedUnit = {
  unit: string;
  product: string | null;
  revision: string | null;
  container: string;
  isHeld: boolean;
};

/** A container in another one, with the units in it at any depth. */
export type PackedContainer = { container: string; units: number };

/** How a container left. */
export type Shipping = { shipment: string; customer: string; destination: string | null; at: string };

/** A container's page; `around` is innermost first. */
export type ContainerRecord = {
  container: string;
  around: string[];
  shipped: { shipment: string; customer: string } | null;
  shipping: Shipping | null;
  containers: PackedContainer[];
  units: PackedUnit[];
  unitCount: number;
  holds: ItemHold[];
  history: RecordedEvent[];
};

/** A shipment's page: the containers that were shipped as such, and every unit in them. */
export type ShipmentRecord = {
  shipment: string;
  customers: string[];
  containers: (PackedContainer & { customer: string; destination: string | null; at: string })[];
  units: PackedUnit[];
  unitCount: number;
  /** Units that left in them and were returned since. */
  cameBack: string[];
};
