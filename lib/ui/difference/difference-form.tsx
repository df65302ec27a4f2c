'use client';

import { Button, TextInput } from '@mantine/core';
import { useRouter } from 'next/navigation';
import { type FormEvent, useState, useTransition } from 'react';
import { useTimeZone, useTranslations } from 'use-intl';
import classes from '@/lib/ui/difference/difference.module.css';
import { instantOnPlantClock, plantClockAt } from '@/lib/ui/plant-clock';
import { differenceQuery, type TraceQuestion } from '@/lib/ui/trace/trace-address';

/** Asks for the two moments on the plant's clock; the second one is now when it is left empty. */
export function DifferenceForm({
  question,
  since,
  until,
}: {
  question: TraceQuestion;
  since: string | undefined;
  until: string | undefined;
}) {
  const t = useTranslations('difference.form');
  const router = useRouter();
  const timeZone = useTimeZone() ?? 'UTC';
  const [isAsking, startAsking] = useTransition();
  const [isReversed, setIsReversed] = useState(false);
  const submit = (event: FormEvent<HTMLFormElement>): void => {
    event.preventDefault();
    const form = new FormData(event.currentTarget);
    const instantFrom = (name: string) =>
      instantOnPlantClock(String(form.get(name) ?? ''), timeZone) ?? undefined;
    const moments = { since: instantFrom('since'), until: instantFrom('until') };
    const isWrong =
      moments.since !== undefined && moments.until !== undefined && moments.since > moments.until;
    setIsReversed(isWrong);
    if (moments.since === undefined || isWrong) return;
    const address = `/trace/difference?${differenceQuery(question, { ...moments, since: moments.since })}`;
    startAsking(() => router.push(address));
  };
  return (
    <form className={`${classes.form} rk-no-print`} onSubmit={submit} aria-label={t('title')}>
      <TextInput
        name="since"
        type="datetime-local"
        step={1}
        required
        withAsterisk={false}
        label={t('since')}
        description={t('sinceHint')}
        defaultValue={since === undefined ? '' : plantClockAt(since, timeZone, 'second')}
      />
      <TextInput
        name="until"
        type="datetime-local"
        step={1}
        label={t('until')}
        description={t('untilHint')}
        error={isReversed ? t('order') : undefined}
        defaultValue={until === undefined ? '' : plantClockAt(until, timeZone, 'second')}
      />
      <Button type="submit" variant="outline" loading={isAsking}>
        {t('submit')}
      </Button>
      <p>{t('zone', { zone: timeZone })}</p>
    </form>
  );
}
