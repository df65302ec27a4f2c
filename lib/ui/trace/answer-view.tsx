'use client';

import { Anchor, Group } from '@mantine/core';
import Link from 'next/link';
import { useTranslations } from 'use-intl';
import { CERTAINTIES } from '@/lib/domain/genealogy/answer';
import type { TraceAnswer } from '@/lib/domain/genealogy/trace-answer';
import type { TraceSubject } from '@/lib/domain/genealogy/trace-subject';
import { codeHref } from '@/lib/ui/code-href';
import { HoldUnitsButton } from '@/lib/ui/hold-units/hold-units-button';
import type { HoldActions } from '@/lib/ui/hold-units/use-hold-batch';
import { conditionsOf, narrowAddress } from '@/lib/ui/narrow/narrow-address';
import { Section } from '@/lib/ui/section';
import { AnswerActions } from '@/lib/ui/trace/answer-actions';
import { AskedConditions } from '@/lib/ui/trace/asked-conditions';
import { Completeness } from '@/lib/ui/trace/completeness';
import { fetchUsed } from '@/lib/ui/trace/fetch-used';
import { GroupTabs } from '@/lib/ui/trace/group-tabs';
import { Narrowing } from '@/lib/ui/trace/narrowing';
import { PagedUnits } from '@/lib/ui/trace/paged-units';
import { ShippedTable } from '@/lib/ui/trace/shipped-table';
import { SubjectFacts } from '@/lib/ui/trace/subject-facts';
import classes from '@/lib/ui/trace/trace.module.css';
import {
  differenceAddress,
  type TraceQuestion,
  traceAddress,
  traceQuery,
} from '@/lib/ui/trace/trace-address';
import { TraceMoment, useMomentWords } from '@/lib/ui/trace/trace-moment';
import { UsedUnitRows } from '@/lib/ui/trace/used-unit-rows';

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
  /** Null for whoever may not place holds, and for an answer that is not the one of now. */
  holdActions: HoldActions | null;
}) {
  const t = useTranslations('trace');
  const tDifference = useTranslations('difference');
  const { certainty, place, relation, ...whole } = question;
  const isFiltered = [certainty, place, relation].some((filter) => filter !== undefined);
  // A narrowing is about now.
  const isPast = question.at !== undefined || question.knownAt !== undefined;
  const rows: TraceQuestion = { ...question, certainty: [answer.shown] };
  return (
    <>
      <Section
        title={<Heading subject={subject} question={question} />}
        beside={
          <AnswerActions
            query={traceQuery(whole)}
            filtered={isFiltered ? traceQuery(question) : null}
            narrower={isPast ? null : narrowAddress(conditionsOf(question))}
            hold={
              holdActions !== null && (
                <HoldUnitsButton
                  actions={holdActions}
                  answer={{
                    counts: answer.asked,
                    isComplete: answer.complete,
                    readPage: ({ certainty: group, ...page }) =>
                      fetchUsed(
                        { ...question, certainty: group === undefined ? [...CERTAINTIES] : [group] },
                        page,
                      ),
                  }}
                />
              )
            }
          />
        }
      >
        <TraceMoment question={question} />
        <AskedConditions question={question} subject={subject} />
        <SubjectFacts subject={subject} />
        <Group gap="lg" className="rk-no-print">
          <SubjectLink subject={subject} />
          <Anchor
            component={Link}
            href={differenceAddress(question)}
            prefetch={false}
            className={classes.link}
          >
            {tDifference('link')}
          </Anchor>
        </Group>
        <GroupTabs question={question} answer={answer} />
        <Completeness facts={answer} />
        {answer.counts.certain.units + answer.counts.possible.units > 0 && (
          <Narrowing question={question} answer={answer} />
        )}
      </Section>
      {answer.shipped.length > 0 && (
        <Section title={t('shipped.title')}>
          <ShippedTable shipped={answer.shipped} />
        </Section>
      )}
      <Section
        title={t(`units.title.${answer.shown}`)}
        beside={
          <Group gap="lg">
            <p>
              {t('units.count', {
                shown: answer.asked[answer.shown],
                count: answer.counts[answer.shown].units,
              })}
            </p>
            {answer.shown === 'certain' && answer.asked.possible > 0 && (
              <Anchor
                component={Link}
                href={traceAddress({ ...question, certainty: ['possible'] })}
                prefetch={false}
                className={`${classes.link} rk-no-print`}
              >
                {t('units.possibleToo', { count: answer.asked.possible })}
              </Anchor>
            )}
          </Group>
        }
      >
        <PagedUnits
          key={traceQuery(rows)}
          first={answer.units}
          next={answer.next}
          count={answer.asked[answer.shown]}
          readPage={(page) => fetchUsed(rows, page)}
        >
          {(units) => <UsedUnitRows units={units} />}
        </PagedUnits>
      </Section>
    </>
  );
}

function Heading({ subject, question }: { subject: TraceSubject; question: TraceQuestion }) {
  const t = useTranslations('trace.heading');
  const moment = useMomentWords()(question);
  const heading = subject.about === 'time' ? t('time') : t(subject.about, { code: subject.code });
  return moment === null ? heading : `${heading}, ${moment}`;
}

function SubjectLink({ subject }: { subject: TraceSubject }) {
  const t = useTranslations('trace');
  if (subject.about !== 'item' && subject.about !== 'lot') return null;
  const href = codeHref(subject.about, subject.code);
  if (href === null) return null;
  return (
    <Anchor component={Link} href={href} prefetch={false} className={classes.link}>
      {t(`page.${subject.about}`)}
    </Anchor>
  );
}
