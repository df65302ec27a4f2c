import { z } from 'zod';
import type { Plant } from '@/lib/domain/plant/plant';
import { readSlotLabel } from '@/lib/domain/station/changeover/slot-label';

/** A label that names no unit, item or container: a badge, a station, or a slot (of which station, when only one has it). */
export const scannedLabelSchema = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('badge'), badge: z.string() }),
  z.object({ kind: z.literal('station'), station: z.string() }),
  z.object({ kind: z.literal('slot'), station: z.string().nullable(), slot: z.string() }),
]);
export type ScannedLabel = z.infer<typeof scannedLabelSchema>;

/** Reads a code as a label of the plant; null for any other code. */
export function readLabel(plant: Plant, code: string): ScannedLabel | null {
  if (plant.station(code) !== null) return { kind: 'station', station: code };
  if (plant.operator(code) !== null) return { kind: 'badge', badge: code };
  const stations = plant.file.stations ?? [];
  const codes = stations.map((station) => station.code);
  const named = readSlotLabel(code, { station: '', slots: [], stations: codes });
  if (named !== null && plant.slotHolds(named.station, named.slot) !== null)
    return { kind: 'slot', ...named };
  const [first, ...others] = codes.filter((station) => plant.slotHolds(station, code) !== null);
  if (first === undefined) return null;
  return { kind: 'slot', station: others.length === 0 ? first : null, slot: code };
}
