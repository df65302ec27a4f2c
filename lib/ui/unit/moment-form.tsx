import { Button, TextInput } from '@mantine/core';
import { useRouter } from 'next/navigation';
import type { FormEvent } from 'react';
import { useTimeZone, useTranslations } from 'use-intl';
import { codeHref } from '@/lib/ui/code-href';
import { instantOnPlantClock, plantClockAt } from '@/lib/ui/plant-clock';
import classes from '@/lib/ui/unit/unit.module.css';

/** Asks for the record as of a moment on the plant's clock. */
export function MomentForm({ unit, at }: { unit: string; at: string | null }) {
  const t = useTranslations('unit.moment');
  const router = useRouter();
  const timeZone = useTimeZone() ?? 'UTC';
  const href = codeHref('unit', unit) ?? '/trace';
  const submit = (event: FormEvent<HTMLFormElement>): void => {
    event.preventDefault();
    const local = new FormData(event.currentTarget).get('at');
    const instant = instantOnPlantClock(typeof local === 'string' ? local : '', timeZone);
    router.push(instant === null ? href : `${href}?at=${encodeURIComponent(instant)}`);
  };
  return (
    <form className={`${classes.moment} rk-no-print`} onSubmit={submit}>
      <TextInput
        key={at}
        name="at"
        type="datetime-local"
        step={1}
        required
        withAsterisk={false}
        label={t('label')}
        description={t('hint')}
        defaultValue={at === null ? '' : plantClockAt(at, timeZone)}
      />
      <Button type="submit" variant="default">
        {t('submit')}
      </Button>
    </form>
  );
}
