'use client';

import { Anchor, Group } from '@mantine/core';
import Link from 'next/link';
import { useTimeZone, useTranslations } from 'use-intl';
import type { TraceAnswer } from '@/lib/domain/genealogy/trace-answer';
import type { TraceSubject } from '@/lib/domain/genealogy/trace-subject';
import { codeHref } from '@/lib/ui/code-href';
import { formatMoment } from '@/lib/ui/format-moment';
import { conditionsOf, narrowAddress } from '@/lib/ui/narrow/narrow-address';
import { Section } from '@/lib/ui/section';
import { AnswerActions } from '@/lib/ui/trace/answer-actions';
import { Completeness } from '@/lib/ui/trace/completeness';
import { GroupTabs } from '@/lib/ui/trace/group-tabs';
import { type HoldActions, HoldUnitsButton } from '@/lib/ui/trace/hold-units-button';
import { Narrowing } from '@/lib/ui/trace/narrowing';
import { ShippedTable } from '@/lib/ui/trace/shipped-table';
import { SubjectFacts } from '@/lib/ui/trace/subject-facts';
import classes from '@/lib/ui/trace/trace.module.css';
import { type TraceQuestion, traceQuery } from '@/lib/ui/trace/trace-address';
import { UsedUnits } from '@/lib/ui/trace/used-units';

/** A where-used answer: about what, how complete, certain and possible apart, where the units are, and the units. */
export function AnswerView({
  question,
  subject,
  answer,
  holdActions,
}: {
  question: TraceQuestion;
  subject: TraceSubject;
  answer: TraceAnswer;
  /** Null for whoever may not place holds. */
  holdActions: HoldActions | null;
}) {
  const t = useTranslations('trace');
  const { certainty, place, relation, ...whole } = question;
  const isFiltered = [certainty, place, relation].some((filter) => filter !== undefined);
  const rowsQuery = traceQuery({ ...question, certainty: [answer.shown] });
  return (
    <>
      <Section
        title={<Heading subject={subject} />}
        beside={
          <AnswerActions
            query={traceQuery(whole)}
            filtered={isFiltered ? traceQuery(question) : null}
            narrower={narrowAddress(conditionsOf(question))}
          />
        }
      >
        <Conditions question={question} subject={subject} />
        <SubjectFacts subject={subject} />
        <SubjectLink subject={subject} />
        <Completeness facts={answer} />
        <GroupTabs question={question} answer={answer} />
        <Narrowing question={question} answer={answer} />
      </Section>
      {answer.shipped.length > 0 && (
        <Section title={t('shipped.title')}>
          <ShippedTable shipped={answer.shipped} />
        </Section>
      )}
      <Section
        title={t(`units.title.${answer.shown}`)}
        beside={
          <Group gap="md">
            <p>{t('units.count', { shown: answer.shownCount, count: answer.counts[answer.shown].units })}</p>
            {holdActions !== null && (
              <HoldUnitsButton
                key={rowsQuery}
                query={rowsQuery}
                count={answer.shownCount}
                actions={holdActions}
              />
            )}
          </Group>
        }
      >
        <UsedUnits
          key={rowsQuery}
          first={answer.units}
          next={answer.next}
          count={answer.shownCount}
          query={rowsQuery}
        />
      </Section>
    </>
  );
}

function Heading({ subject }: { subject: TraceSubject }) {
  const t = useTranslations('trace.heading');
  return subject.about === 'time' ? t('time') : t(subject.about, { code: subject.code });
}

/** The conditions beside the leading one, in words. */
function Conditions({ question, subject }: { question: TraceQuestion; subject: TraceSubject }) {
  const t = useTranslations('trace.asked');
  const timeZone = useTimeZone() ?? 'UTC';
  const timeOf = (instant: string) => formatMoment(Date.parse(instant), { timeZone, precision: 'minute' });
  const { station, operator, from, to } = question;
  const words = [
    station !== undefined && subject.about !== 'station' && t('station', { station }),
    operator !== undefined && subject.about !== 'operator' && t('operator', { operator }),
    from !== undefined && t('from', { from: timeOf(from) }),
    to !== undefined && t('to', { to: timeOf(to) }),
  ].filter((word) => word !== false);
  return words.length === 0 ? null : <p className={classes.asked}>{words.join(', ')}</p>;
}

function SubjectLink({ subject }: { subject: TraceSubject }) {
  const t = useTranslations('trace');
  if (subject.about !== 'item' && subject.about !== 'lot') return null;
  const href = codeHref(subject.about, subject.code);
  if (href === null) return null;
  return (
    <Anchor component={Link} href={href} prefetch={false} className="rk-no-print">
      {t(`page.${subject.about}`)}
    </Anchor>
  );
}
