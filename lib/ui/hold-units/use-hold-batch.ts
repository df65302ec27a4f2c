import { useState } from 'react';
import type { Refusal } from '@/lib/domain/gate/refusals';
import type { Certainty } from '@/lib/domain/genealogy/answer';
import { PAGE_MAX } from '@/lib/domain/genealogy/question';
import { HOLD_BATCH_MAX, HOLD_CALL_MAX } from '@/lib/domain/holds/hold-batch';

type Refused = { unit: string; refusals: Refusal[] };

/** The server's part: a batch, its units some at a time, and its end. */
export type HoldActions = {
  begin: () => Promise<string>;
  hold: (request: {
    batch: string;
    units: string[];
    reason: string;
  }) => Promise<{ ok: true; already: number; refused: Refused[] } | { ok: false }>;
  end: () => Promise<void>;
};

/** Which units of an answer: those of one group, or of both. */
export type HoldGroup = Certainty | 'both';

/** Reads a page of an answer's units; without a certainty, of both groups. */
export type ReadPage = (page: {
  certainty?: Certainty;
  limit: number;
  cursor: string | null;
}) => Promise<{ units: readonly { unit: string }[]; next: string | null }>;

/** A batch as far as it has come, so that a second try goes on where the first one stopped. */
export type HoldBatch = {
  id: string;
  reason: string;
  units: string[];
  done: number;
  already: number;
  refused: Refused[];
};

type State =
  | { step: 'asking'; batch: null }
  | { step: 'reading' | 'unread'; batch: null }
  | { step: 'holding' | 'failed' | 'done'; batch: HoldBatch };

/** Holds the units of an answer in one batch, some at a time; `start` after a failure goes on with the same batch. */
export function useHoldBatch(actions: HoldActions, readPage: ReadPage) {
  const [state, setState] = useState<State>({ step: 'asking', batch: null });

  const holdAll = async (all: HoldBatch): Promise<void> => {
    let batch = all;
    while (batch.done < batch.units.length) {
      setState({ step: 'holding', batch });
      const units = batch.units.slice(batch.done, batch.done + HOLD_CALL_MAX);
      const { id, reason } = batch;
      const answer = await actions.hold({ batch: id, units, reason }).catch(() => null);
      if (answer?.ok !== true) return setState({ step: 'failed', batch });
      batch = {
        ...batch,
        done: batch.done + units.length,
        already: batch.already + answer.already,
        refused: [...batch.refused, ...answer.refused],
      };
    }
    setState({ step: 'done', batch });
    await actions.end().catch(() => undefined);
  };

  const start = async (wish: { group: HoldGroup; reason: string }): Promise<void> => {
    if (state.batch !== null) return holdAll(state.batch);
    setState({ step: 'reading', batch: null });
    const batch = await begin(wish, actions, readPage).catch(() => null);
    if (batch === null) return setState({ step: 'unread', batch: null });
    await holdAll(batch);
  };

  return { state, start };
}

async function begin(
  { group, reason }: { group: HoldGroup; reason: string },
  actions: HoldActions,
  readPage: ReadPage,
): Promise<HoldBatch> {
  const units = await unitsOf(group, readPage);
  return { id: await actions.begin(), reason, units, done: 0, already: 0, refused: [] };
}

/** The units of the answer, page by page, at most a batch of them. */
async function unitsOf(group: HoldGroup, readPage: ReadPage): Promise<string[]> {
  const units: string[] = [];
  let cursor: string | null = null;
  do {
    const page = await readPage({
      ...(group !== 'both' && { certainty: group }),
      limit: Math.min(PAGE_MAX, HOLD_BATCH_MAX - units.length),
      cursor,
    });
    units.push(...page.units.map(({ unit }) => unit));
    cursor = page.next;
  } while (cursor !== null && units.length < HOLD_BATCH_MAX);
  return units;
}
