'use client';

import { Anchor, Button, Group } from '@mantine/core';
import { IconCircleCheckFilled, IconFileTypeCsv, IconInfoCircle, IconPrinter } from '@tabler/icons-react';
import Link from 'next/link';
import { useTimeZone, useTranslations } from 'use-intl';
import type { Difference } from '@/lib/domain/genealogy/difference';
import type { TraceSubject } from '@/lib/domain/genealogy/trace-subject';
import { Causes } from '@/lib/ui/difference/causes';
import classes from '@/lib/ui/difference/difference.module.css';
import { DifferenceForm } from '@/lib/ui/difference/difference-form';
import { KindTiles } from '@/lib/ui/difference/kind-tiles';
import { formatMoment } from '@/lib/ui/format-moment';
import { Section } from '@/lib/ui/section';
import { AskedConditions } from '@/lib/ui/trace/asked-conditions';
import { Completeness } from '@/lib/ui/trace/completeness';
import { RecordScreen } from '@/lib/ui/trace/record-screen';
import { differenceQuery, type TraceQuestion, traceAddress } from '@/lib/ui/trace/trace-address';
import { Trouble } from '@/lib/ui/trouble';

/** A difference, or how many units would have to be compared when they are too many. */
type Compared = { ok: true; difference: Difference } | { ok: false; refusal: { units: number; max: number } };

/** What became of a where-used answer between two moments; `compared` null: no moment has been given yet. */
export function DifferencePage({
  question,
  subject,
  since,
  until,
  compared,
}: {
  question: TraceQuestion;
  subject: TraceSubject;
  since: string | undefined;
  until: string | undefined;
  compared: Compared | null;
}) {
  const answer = compared?.ok === true ? compared.difference : null;
  const t = useTranslations('difference');
  const tHeading = useTranslations('difference.heading');
  const query = since === undefined ? null : differenceQuery(question, { since, until });
  return (
    <RecordScreen title={t('title')}>
      <Section
        title={subject.about === 'time' ? tHeading('time') : tHeading(subject.about, { code: subject.code })}
        beside={query !== null && answer !== null && <DifferenceActions query={query} />}
      >
        <AskedConditions question={question} subject={subject} />
        <Group gap="lg" className="rk-no-print">
          <Anchor component={Link} href={traceAddress(question)} prefetch={false} className={classes.link}>
            {t('back')}
          </Anchor>
          {since !== undefined && (
            <Anchor
              component={Link}
              href={traceAddress({ ...question, knownAt: since })}
              prefetch={false}
              className={classes.link}
            >
              {t('reported')}
            </Anchor>
          )}
        </Group>
        <DifferenceForm key={query} question={question} since={since} until={until} />
        {answer !== null && <AtAGlance answer={answer} />}
      </Section>
      {compared === null && (
        <Section title={t('ask.title')}>
          <p>{t('ask.text')}</p>
        </Section>
      )}
      {compared?.ok === false && (
        <Section title={t('tooMany.title')}>
          <p role="alert">
            {t('tooMany.text', { units: compared.refusal.units, max: compared.refusal.max })}
          </p>
        </Section>
      )}
      {answer !== null && <WhatDidIt answer={answer} />}
    </RecordScreen>
  );
}

function DifferenceActions({ query }: { query: string }) {
  const t = useTranslations('difference');
  const tTrace = useTranslations('trace');
  return (
    <Group className="rk-no-print" gap="xs">
      <Button
        component="a"
        href={`/api/trace/difference.csv?${query}`}
        download
        variant="default"
        leftSection={<IconFileTypeCsv aria-hidden />}
      >
        {t('csv')}
      </Button>
      <Button variant="default" leftSection={<IconPrinter aria-hidden />} onClick={() => window.print()}>
        {tTrace('print')}
      </Button>
    </Group>
  );
}

function AtAGlance({ answer }: { answer: Difference }) {
  const t = useTranslations('difference');
  const timeZone = useTimeZone() ?? 'UTC';
  const timeOf = (instant: string) => formatMoment(Date.parse(instant), { timeZone, precision: 'second' });
  return (
    <>
      <div className={classes.sizes}>
        <p>{t('size', { time: timeOf(answer.since), ...answer.before })}</p>
        <p>{t('size', { time: timeOf(answer.until), ...answer.after })}</p>
      </div>
      <KindTiles counts={answer.counts} />
      <Completeness facts={answer} />
      {answer.leavesOut && <Trouble meaning="quiet" shape={IconInfoCircle} title={t('leavesOut')} />}
    </>
  );
}

function WhatDidIt({ answer: { counts, changes, events, late } }: { answer: Difference }) {
  const t = useTranslations('difference');
  const count = counts.joined + counts.left + counts.certainty + counts.relation;
  if (count === 0)
    return (
      <Section title={t('none.title')}>
        <p className={classes.none}>
          <IconCircleCheckFilled aria-hidden />
          {t('none.text', { late })}
        </p>
      </Section>
    );
  return (
    <Section title={t('events.title')} beside={<p>{t('events.count', { events: events.length })}</p>}>
      {changes.length < count && <p>{t('listed', { shown: changes.length, count })}</p>}
      <Causes events={events} changes={changes} />
    </Section>
  );
}
