import type { HoldTargetKind, ItemKind, LabelKind } from '@/lib/domain/events/vocabulary';
import type { Plant } from '@/lib/domain/plant/plant';
import type { UnitState } from '@/lib/domain/units/unit-state';

/** What is known of an item that was received. */
export type ItemFacts = {
  item: string;
  kind: ItemKind;
  part: string | null;
  lot: string | null;
  isRetired: boolean;
};

/** What is known of a container; `shipment` is its own or that of a container around it. */
export type ContainerFacts = { container: string; inside: string | null; shipment: string | null };

/** A hold that stops its target at the moment that is judged. */
export type OpenHold = { hold: string; kind: HoldTargetKind; id: string; reason: string };

/**
 * The record as it stood at the moment of the event that is judged. Server and tablet each bring their own; the gate
 * asks nothing else.
 */
export type Known = {
  plant: Plant;
  unit(unit: string): UnitState | null;
  /** Whether a unit was started at any time, later ones included: a serial is given once. */
  isStartedEver(unit: string): boolean;
  item(item: string): ItemFacts | null;
  container(container: string): ContainerFacts | null;
  /** The item in each occupied slot of a station. */
  slotContents(station: string): ReadonlyMap<string, string>;
  /** By slot, the item whose end was spliced away there and may still be drawn from: the grey zone is not used up. */
  greyContents(station: string): ReadonlyMap<string, string>;
  holdsOn(kind: HoldTargetKind, id: string): OpenHold[];
  /** Units inside a unit, at any depth. */
  innerUnits(unit: string): string[];
  /** The unit that directly holds a unit, or null. */
  outerUnit(unit: string): string | null;
  /** Units and containers in a container, at any depth. */
  contentsOf(container: string): { units: string[]; containers: string[] };
  /** State of a hold named by the id of the event that placed it; null when no event placed it. */
  hold(hold: string): { isReleased: boolean } | null;
  /** An event that was recorded against a rule; null when nothing is wrong with it. */
  exception(event: string): { isCleared: boolean } | null;
  /** Whether a label with this code was printed before. */
  isLabelled(kind: LabelKind, id: string): boolean;
  /** Type of a recorded event, or null. */
  eventType(id: string): string | null;
};
