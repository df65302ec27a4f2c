import { admitAsBuilt } from '@/lib/data/moment/admit-as-built';
import { onMoment } from '@/lib/data/moment/on-moment';
import { loadPlant } from '@/lib/data/plant/load-plant';
import type { Queryable } from '@/lib/data/pool';
import { findCompleteness } from '@/lib/data/trace/find-completeness';
import { onSnapshot } from '@/lib/data/transaction';
import { toLogged } from '@/lib/domain/events/logged-event';
import type { GenealogyAnswer, GenealogyQuestion } from '@/lib/domain/genealogy/graph/genealogy-graph';
import { genealogyOf } from '@/lib/domain/genealogy/graph/genealogy-of';
import { limitNodes } from '@/lib/domain/genealogy/graph/limit-nodes';
import type { UnitFacts } from '@/lib/domain/genealogy/graph/unit-facts';
import { instantOf } from '@/lib/domain/time';
import { type AsBuilt, AsBuiltReader } from '@/lib/server/as-built';
import { database } from '@/lib/server/database';

/** Most units whose records are read for one picture; those beyond are in it, marked as not followed. */
const UNITS_MAX = 300;

/** Where a unit came from and where it went, now or as of a moment; null when no event names it. */
export function readGenealogy(question: GenealogyQuestion): Promise<GenealogyAnswer | null> {
  const { at } = question;
  const { pool } = database();
  if (at === undefined)
    return onSnapshot(pool, (client) => {
      const reader = new AsBuiltReader(client);
      return genealogy(question, { live: client, read: (unit) => reader.read(unit) });
    });
  return onMoment(pool, { knownAtUs: Number.POSITIVE_INFINITY, atUs: instantOf(at) }, (record) => {
    const reader = new AsBuiltReader(record.db);
    const read = async (unit: string) => {
      await admitAsBuilt(record, unit);
      return reader.read(unit);
    };
    return genealogy(question, { live: record.live, read });
  });
}

async function genealogy(
  { unit, at, limit }: GenealogyQuestion,
  { live, read }: { live: Queryable; read: (unit: string) => Promise<AsBuilt | null> },
): Promise<GenealogyAnswer | null> {
  const completeness = await findCompleteness(live);
  const { plant } = await loadPlant(live);
  const known = new Map<string, UnitFacts | null>();
  const ledger = { plant, facts: (each: string) => known.get(each) ?? null };
  let wanted = [unit];
  while (wanted.length > 0) {
    for (const each of wanted.slice(0, UNITS_MAX - known.size)) known.set(each, factsOf(await read(each)));
    wanted =
      known.size < UNITS_MAX ? genealogyOf(ledger, unit).unread.filter((each) => !known.has(each)) : [];
  }
  if (ledger.facts(unit) === null) return null;
  const graph = limitNodes(genealogyOf(ledger, unit), limit);
  return { unit, at: at ?? null, ...completeness, ...graph };
}

function factsOf(record: AsBuilt | null): UnitFacts | null {
  if (record === null) return null;
  const { events, ...facts } = record;
  const counting = events.flatMap(
    ({ voided, voidedBy: _, recordedAt: __, recordedBy: ___, flags: ____, ...event }) =>
      voided ? [] : [toLogged(event)],
  );
  return { ...facts, events: counting };
}
