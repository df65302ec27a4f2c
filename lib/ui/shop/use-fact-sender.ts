import { useCallback } from 'react';
import type { Refusal } from '@/lib/domain/gate/refusals';
import { thrownErrors } from '@/lib/domain/input-errors';
import type { EventDraft } from '@/lib/domain/station/event-draft';
import { useRecorder } from '@/lib/ui/record/record-provider';

/**
 * Records a fact and waits for the server's answer, however long it takes: null when it is recorded, else every
 * reason. A refusal counts as read, because the screen that asked shows it.
 */
export function useFactSender(): (draft: EventDraft) => Promise<Refusal[] | null> {
  const recorder = useRecorder();
  return useCallback(
    async (draft) => {
      try {
        const { id, answered } = await recorder.record(draft);
        const reasons = await answered;
        if (reasons !== null) await recorder.forget(id);
        return reasons;
      } catch (error) {
        // The event never became one: what was typed is no code.
        return [{ code: 'malformed', errors: thrownErrors(error) }];
      }
    },
    [recorder],
  );
}
