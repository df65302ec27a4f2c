'use client';

import type { Refusal } from '@/lib/domain/gate/refusals';
import { useRefusalWords } from '@/lib/ui/verdict/use-refusal-words';
import classes from '@/lib/ui/verdict/verdict.module.css';

/** Every reason in order of precedence: title, then the sentence that says the way out. */
export function ReasonList({ reasons }: { reasons: readonly Refusal[] }) {
  const wordsOf = useRefusalWords();
  return (
    <ul className={classes.reasons}>
      {reasons.map((reason) => {
        const { title, text } = wordsOf(reason);
        return (
          <li key={JSON.stringify(reason)} data-code={reason.code}>
            <strong>{title}</strong>
            <span>{text}</span>
          </li>
        );
      })}
    </ul>
  );
}
