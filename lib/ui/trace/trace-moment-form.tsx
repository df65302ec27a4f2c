'use client';

import { Button, TextInput } from '@mantine/core';
import { useRouter } from 'next/navigation';
import type { FormEvent } from 'react';
import { useTimeZone, useTranslations } from 'use-intl';
import { instantOnPlantClock, plantClockAt } from '@/lib/ui/plant-clock';
import classes from '@/lib/ui/trace/trace.module.css';
import { type TraceQuestion, traceAddress } from '@/lib/ui/trace/trace-address';

/** Asks for the same answer as it was known, or as it stood, at a moment on the plant's clock; empty is now. */
export function TraceMomentForm({ question }: { question: TraceQuestion }) {
  const t = useTranslations('trace.moment');
  const router = useRouter();
  const timeZone = useTimeZone() ?? 'UTC';
  const submit = (event: FormEvent<HTMLFormElement>): void => {
    event.preventDefault();
    const form = new FormData(event.currentTarget);
    const instantFrom = (name: string) =>
      instantOnPlantClock(String(form.get(name) ?? ''), timeZone) ?? undefined;
    const { at: _, knownAt: __, ...asked } = question;
    router.push(traceAddress({ ...asked, at: instantFrom('at'), knownAt: instantFrom('knownAt') }), {
      scroll: false,
    });
  };
  const shown = (instant: string | undefined) =>
    instant === undefined ? '' : plantClockAt(instant, timeZone, 'second');
  return (
    <form className={classes.moments} onSubmit={submit}>
      <TextInput
        name="knownAt"
        type="datetime-local"
        step={1}
        label={t('knownAt')}
        description={t('knownAtHint')}
        defaultValue={shown(question.knownAt)}
      />
      <TextInput
        name="at"
        type="datetime-local"
        step={1}
        label={t('at')}
        description={t('atHint')}
        defaultValue={shown(question.at)}
      />
      <Button type="submit" variant="outline">
        {t('submit')}
      </Button>
      <p className={classes.quiet}>{t('zone', { zone: timeZone })}</p>
    </form>
  );
}
