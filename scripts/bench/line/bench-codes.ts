import { REEL_SLOTS, type TOOL_SLOTS } from '@/scripts/bench/line/bench-plant';

/** Units that one reel supplies. */
export const UNITS_PER_REEL = 455;
/** Reels of one lot: a lot has 50,050 units. */
export const REELS_PER_LOT = 110;
/** Units in a carton, cartons on a pallet. */
export const UNITS_PER_CARTON = 20;
export const CARTONS_PER_PALLET = 10;

const padded = (value: number, length: number) => String(value).padStart(length, '0');

export const unitCode = (unit: number) => `WX4C${padded(unit, 7)}`;
export const cabinetCode = (cabinet: number) => `CAB${padded(cabinet, 6)}`;
export const cartonCode = (carton: number) => `CT${padded(carton, 6)}`;
export const palletCode = (pallet: number) => `PL${padded(pallet, 5)}`;
export const spareCode = (unit: number) => `LP${padded(unit, 7)}`;
export const reelCode = (slot: number, reel: number) => `R${padded(slot, 2)}-${padded(reel, 5)}`;
export const lotCode = (slot: number, reel: number) =>
  `L${padded(slot, 2)}-${padded(Math.floor(reel / REELS_PER_LOT), 3)}`;
export const toolCode = (tool: (typeof TOOL_SLOTS)[number], unit: number) =>
  `${tool.prefix}-${padded(Math.floor(unit / tool.unitsEach), 5)}`;

/** Which reel of a slot a unit is placed from; slots run out one after the other, not all at once. */
export function reelOf(slot: number, unit: number): number {
  return Math.floor((unit + reelOffset(slot)) / UNITS_PER_REEL);
}

/** Whether a unit is the first one of a new reel in a slot. */
export function startsReel(slot: number, unit: number): boolean {
  return (unit + reelOffset(slot)) % UNITS_PER_REEL === 0;
}

/** The first unit that a reel is for; its mount is what the next one's ends. */
export function firstUnitOf(slot: number, reel: number): number {
  return Math.max(0, reel * UNITS_PER_REEL - reelOffset(slot));
}

function reelOffset(slot: number): number {
  return Math.floor((slot * UNITS_PER_REEL) / REEL_SLOTS.length);
}
