'use client';

import type { ReactNode } from 'react';
import { useTranslations } from 'use-intl';
import { Section } from '@/lib/ui/section';
import { Screen } from '@/lib/ui/shell/screen';
import { ConditionForm } from '@/lib/ui/trace/condition-form';
import classes from '@/lib/ui/trace/trace.module.css';
import { type TraceQuestion, traceQuery } from '@/lib/ui/trace/trace-address';
import { TraceBox } from '@/lib/ui/trace/trace-box';
import { TraceMomentForm } from '@/lib/ui/trace/trace-moment-form';

/** The box, whatever it led to, and the conditions: open from the start when there is nothing else to see. */
export function TraceScreen({
  question,
  stations,
  operators,
  children,
}: {
  question: TraceQuestion;
  stations: readonly string[];
  operators: readonly { badge: string; name: string }[];
  children: ReactNode;
}) {
  const t = useTranslations('trace');
  const { station, operator, from, to } = question;
  const hasConditions = [station, operator, from, to].some((condition) => condition !== undefined);
  return (
    <Screen title={t('title')}>
      <div className={`${classes.ask} rk-no-print`}>
        <TraceBox />
        <details className={classes.details} open={hasConditions || children === null}>
          <summary>{t('conditions.title')}</summary>
          <ConditionForm
            key={traceQuery(question)}
            question={question}
            stations={stations}
            operators={operators}
          />
        </details>
        {children !== null && hasSubject(question) && (
          <details
            className={classes.details}
            open={question.at !== undefined || question.knownAt !== undefined}
          >
            <summary>{t('moment.title')}</summary>
            <TraceMomentForm key={traceQuery(question)} question={question} />
          </details>
        )}
      </div>
      {children ?? (
        <Section title={t('empty.title')}>
          <p className={classes.asked}>{t('empty.text')}</p>
        </Section>
      )}
    </Screen>
  );
}

/** Whether a question asks about anything, which the screen's first view and faults do not. */
function hasSubject(question: TraceQuestion): boolean {
  return Object.values(question).some((value) => value !== undefined);
}
