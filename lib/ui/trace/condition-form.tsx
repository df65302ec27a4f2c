'use client';

import { Anchor, Button, Group, NativeSelect, TextInput } from '@mantine/core';
import Link from 'next/link';
import { useRouter } from 'next/navigation';
import type { FormEvent } from 'react';
import { useTimeZone, useTranslations } from 'use-intl';
import { instantOnPlantClock, plantClockAt } from '@/lib/ui/plant-clock';
import classes from '@/lib/ui/trace/trace.module.css';
import { type TraceQuestion, traceAddress } from '@/lib/ui/trace/trace-address';

/** Further conditions on the same draw, or a question of their own when no item is asked for. */
export function ConditionForm({
  question,
  stations,
  operators,
}: {
  question: TraceQuestion;
  stations: readonly string[];
  operators: readonly { badge: string; name: string }[];
}) {
  const t = useTranslations('trace.conditions');
  const router = useRouter();
  const timeZone = useTimeZone() ?? 'UTC';
  const any = { value: '', label: t('any') };
  const { station, operator, from, to, ...rest } = question;

  const submit = (event: FormEvent<HTMLFormElement>): void => {
    event.preventDefault();
    const form = new FormData(event.currentTarget);
    const textOf = (name: string) => String(form.get(name) ?? '') || undefined;
    const instantFrom = (name: string) => instantOnPlantClock(textOf(name) ?? '', timeZone) ?? undefined;
    const conditions = {
      station: textOf('station'),
      operator: textOf('operator'),
      from: instantFrom('from'),
      to: instantFrom('to'),
    };
    router.push(traceAddress({ ...rest, ...conditions }), { scroll: false });
  };

  return (
    <form className={classes.conditions} onSubmit={submit}>
      <NativeSelect
        name="station"
        label={t('station')}
        defaultValue={station ?? ''}
        data={[any, ...stations.map((code) => ({ value: code, label: code }))]}
      />
      <NativeSelect
        name="operator"
        label={t('operator')}
        defaultValue={operator ?? ''}
        data={[
          any,
          ...operators.map(({ badge, name }) => ({ value: badge, label: `${badge} ${name}`.trim() })),
        ]}
      />
      <TextInput
        name="from"
        type="datetime-local"
        label={t('from')}
        defaultValue={from === undefined ? '' : plantClockAt(from, timeZone)}
      />
      <TextInput
        name="to"
        type="datetime-local"
        label={t('to')}
        defaultValue={to === undefined ? '' : plantClockAt(to, timeZone)}
      />
      <Group>
        <Button type="submit" variant="outline">
          {t('submit')}
        </Button>
        <Anchor component={Link} href={traceAddress(rest)} prefetch={false} scroll={false}>
          {t('clear')}
        </Anchor>
      </Group>
      <p className={classes.quiet}>
        {t('hint')} {t('zone', { zone: timeZone })}
      </p>
    </form>
  );
}
