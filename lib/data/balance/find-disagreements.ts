import { findReelPasses } from '@/lib/data/balance/find-reel-passes';
import type { Queryable } from '@/lib/data/pool';
import { type DoubtWindow, suspectPasses, windowOf } from '@/lib/domain/balance/doubt-window';
import { explain, type Finding, type Suspicion } from '@/lib/domain/balance/explain';
import type { Ledger, ReelPass } from '@/lib/domain/balance/ledger';

/** A suspicion with the passes that it is about and the window that they span; null where it has none. */
export type Named = { suspicion: Suspicion; passes: ReelPass[]; window: DoubtWindow | null };

/** A finding with what it names. */
export type Disagreement = { finding: Finding; named: Named[] };

/** What is wrong in a ledger, with the intervals that explain it. */
export async function findDisagreements(db: Queryable, ledger: Ledger): Promise<Disagreement[]> {
  const findings = explain(ledger);
  const stays = findings.flatMap(({ suspicions }) => suspicions.map(({ stay }) => stay.event));
  const passesOf = await findReelPasses(db, [...new Set(stays)]);
  return findings.map((finding) => ({
    finding,
    named: finding.suspicions.map((suspicion) => {
      const passes = suspectPasses(suspicion, passesOf.get(suspicion.stay.event) ?? []);
      return { suspicion, passes, window: windowOf(suspicion, passes) };
    }),
  }));
}
