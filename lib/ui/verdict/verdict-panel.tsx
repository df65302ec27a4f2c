'use client';

import type { ReactNode } from 'react';
import { useTranslations } from 'use-intl';
import type { Refusal } from '@/lib/domain/gate/refusals';
import { ReasonList } from '@/lib/ui/verdict/reason-list';
import classes from '@/lib/ui/verdict/verdict.module.css';
import { type VerdictKind, VerdictShape } from '@/lib/ui/verdict/verdict-shape';

/**
 * Go or no-go, read from across the bench: one word of at least 64 px, one shape, one colour, then why. Screen readers
 * hear it as soon as it changes. `text` replaces the standard sentence, for example with the unit and what was done;
 * `children` stand under the reasons.
 */
export function VerdictPanel({
  kind,
  text,
  reasons = [],
  children,
}: {
  kind: VerdictKind;
  text?: ReactNode;
  reasons?: readonly Refusal[];
  children?: ReactNode;
}) {
  const t = useTranslations('verdict');
  return (
    <section
      className={classes.panel}
      data-kind={kind}
      data-verdict={kind}
      role="status"
      aria-live="assertive"
    >
      <div className={classes.head}>
        <VerdictShape kind={kind} />
        <div>
          <p className={classes.word}>{t(`${kind}.word`)}</p>
          <p className={classes.about}>{text ?? t(`${kind}.text`)}</p>
        </div>
      </div>
      {reasons.length > 0 && <ReasonList reasons={reasons} />}
      {children}
    </section>
  );
}
