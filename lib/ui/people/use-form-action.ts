import { type FormEvent, startTransition, useActionState } from 'react';
import type { FormFault } from '@/lib/ui/people/form-fault';

/** A server action that either does what the form says or tells what is wrong with it. */
export type FormAction = (form: FormData) => Promise<{ faults: FormFault[] }>;

/** Sends a form to a server action without emptying it when the action finds faults; `onDone` when it finds none. */
export function useFormAction({ action, onDone }: { action: FormAction; onDone: () => void }): {
  faults: FormFault[];
  isPending: boolean;
  onSubmit: (event: FormEvent<HTMLFormElement>) => void;
} {
  const [faults, submit, isPending] = useActionState(async (_before: FormFault[], form: FormData) => {
    const answer = await action(form);
    if (answer.faults.length === 0) onDone();
    return answer.faults;
  }, []);
  return {
    faults,
    isPending,
    onSubmit(event) {
      event.preventDefault();
      const form = new FormData(event.currentTarget);
      startTransition(() => submit(form));
    },
  };
}
