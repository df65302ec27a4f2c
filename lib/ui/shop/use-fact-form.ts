import { useRef, useState } from 'react';
import type { Refusal } from '@/lib/domain/gate/refusals';
import { type FieldFaults, readDraft } from '@/lib/domain/station/draft-faults';
import { giveSignal } from '@/lib/ui/shop/signals';
import { useFactSender } from '@/lib/ui/shop/use-fact-sender';

/** How the last attempt to record a form ended; a recorded one is told by its screen. */
export type FormState = { kind: 'open' } | { kind: 'sending' } | { kind: 'refused'; reasons: Refusal[] };

/** A form whose fields become the body of one event. */
export type FactForm<Fields> = {
  fields: Fields;
  set: (change: Partial<Fields>) => void;
  faults: FieldFaults;
  state: FormState;
  /** Checks, records and waits for the answer. */
  submit: () => Promise<void>;
  /** The same with a last change, for buttons that say it all. */
  submitWith: (change: Partial<Fields>) => Promise<void>;
};

/**
 * A form that records a fact, once however often it is sent. `toDraft` makes the event from the fields (a number that
 * is none stays a text, so that the event's schema says so).
 */
export function useFactForm<Fields extends object>(options: {
  initial: Fields;
  toDraft: (fields: Fields) => object;
  onRecorded: (fields: Fields) => void;
}): FactForm<Fields> {
  const [fields, setFields] = useState(options.initial);
  const [faults, setFaults] = useState<FieldFaults>({});
  const [state, setState] = useState<FormState>({ kind: 'open' });
  const isSending = useRef(false);
  const send = useFactSender();

  const submitWith = async (change: Partial<Fields>): Promise<void> => {
    if (isSending.current) return;
    const given = { ...fields, ...change };
    const read = readDraft(options.toDraft(given));
    setFields(given);
    setFaults(read.ok ? {} : read.faults);
    if (!read.ok) {
      giveSignal('attention');
      return;
    }
    isSending.current = true;
    setState({ kind: 'sending' });
    const reasons = await send(read.draft);
    isSending.current = false;
    giveSignal(reasons === null ? 'go' : 'stop');
    setState(reasons === null ? { kind: 'open' } : { kind: 'refused', reasons });
    if (reasons === null) options.onRecorded(given);
  };
  return {
    fields,
    set: (change) => setFields((before) => ({ ...before, ...change })),
    faults,
    state,
    submit: () => submitWith({}),
    submitWith,
  };
}
