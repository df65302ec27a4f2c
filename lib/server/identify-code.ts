import { loadPlant } from '@/lib/data/plant/load-plant';
import { findCodeKinds } from '@/lib/data/trace/find-code-kinds';
import { codeFault } from '@/lib/domain/codes';
import { SCANNED_KINDS, type ScannedKind } from '@/lib/domain/genealogy/scanned-kind';
import { database } from '@/lib/server/database';

/** Everything that a code is: usually one thing, none when nothing carries it, several when codes coincide. */
export async function identifyCode(code: string): Promise<ScannedKind[]> {
  if (codeFault(code) !== null) return [];
  const { pool } = database();
  const recorded = await findCodeKinds(pool, code);
  const { plant } = await loadPlant(pool);
  const isListedPart = (plant.file.parts ?? []).some(({ number }) => number === code);
  const known: Record<ScannedKind, boolean> = {
    ...recorded,
    part: recorded.part || isListedPart,
    station: plant.station(code) !== null,
    operator: plant.operator(code) !== null,
  };
  return SCANNED_KINDS.filter((kind) => known[kind]);
}
