/** A slot that a scanned code names: here, or at another station. */
export type SlotLabel = { station: string; slot: string };

/**
 * Reads the label of a slot: `STATION:SLOT`, or just the slot's name at the station where it is scanned. Names may
 * hold colons themselves, so every split that gives a known station is tried, the longest station first. Null for any
 * other code.
 */
export function readSlotLabel(
  code: string,
  here: { station: string; slots: readonly string[]; stations: readonly string[] },
): SlotLabel | null {
  if (here.slots.includes(code)) return { station: here.station, slot: code };
  for (let at = code.lastIndexOf(':'); at > 0; at = code.lastIndexOf(':', at - 1)) {
    const station = code.slice(0, at);
    const slot = code.slice(at + 1);
    if (slot === '') continue;
    if (station === here.station && here.slots.includes(slot)) return { station, slot };
    if (station !== here.station && here.stations.includes(station)) return { station, slot };
  }
  return null;
}
