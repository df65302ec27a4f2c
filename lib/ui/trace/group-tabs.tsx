'use client';

import { IconHelpHexagon, IconSquareCheckFilled } from '@tabler/icons-react';
import Link from 'next/link';
import { useFormatter, useTranslations } from 'use-intl';
import { CERTAINTIES } from '@/lib/domain/genealogy/answer';
import type { TraceAnswer } from '@/lib/domain/genealogy/trace-answer';
import classes from '@/lib/ui/trace/trace.module.css';
import { type TraceQuestion, traceAddress } from '@/lib/ui/trace/trace-address';

const SHAPES = { certain: IconSquareCheckFilled, possible: IconHelpHexagon };

/** The two groups side by side, each with its number and what it means; the one that is looked at is joined below. */
export function GroupTabs({ question, answer }: { question: TraceQuestion; answer: TraceAnswer }) {
  const t = useTranslations('trace.group');
  const { number } = useFormatter();
  return (
    <nav className={classes.groups} aria-label={t('label')}>
      {CERTAINTIES.map((group) => {
        const Shape = SHAPES[group];
        const count = answer.counts[group].units;
        return (
          <Link
            key={group}
            href={traceAddress({ ...withoutNarrowing(question), certainty: [group] })}
            prefetch={false}
            scroll={false}
            data-group={group}
            data-empty={count === 0}
            aria-current={answer.shown === group ? 'true' : undefined}
          >
            <span className={classes.groupName}>
              <Shape aria-hidden />
              {t(group)}
            </span>
            <span className={classes.groupCount}>
              <strong>{number(count)}</strong> {t('units', { count })}
            </span>
            <span>{t(`${group}Text`)}</span>
          </Link>
        );
      })}
    </nav>
  );
}

function withoutNarrowing({ place: _, relation: __, ...question }: TraceQuestion): TraceQuestion {
  return question;
}
