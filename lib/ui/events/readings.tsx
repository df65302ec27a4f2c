'use client';

import { IconAlertOctagonFilled } from '@tabler/icons-react';
import { useFormatter, useTranslations } from 'use-intl';
import type { z } from 'zod';
import type { readingSchema } from '@/lib/domain/events/unit-events';
import classes from '@/lib/ui/events/timeline.module.css';

type Reading = z.infer<typeof readingSchema>;

/** What was measured, each with its unit and limits; one outside of them is marked by word, shape and colour. */
export function Readings({ readings }: { readings: readonly Reading[] }) {
  const t = useTranslations('eventFacts');
  const { number } = useFormatter();
  const textOf = (value: number | string) =>
    typeof value === 'number' ? number(value, { maximumSignificantDigits: 9 }) : value;
  return (
    <span className={classes.readings}>
      {readings.map((reading, index) => {
        const { name, value, unit = '' } = reading;
        const isOutside = isOutsideLimits(reading);
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: the readings of an event never change
          <span key={index} data-outside={isOutside}>
            {isOutside && <IconAlertOctagonFilled aria-hidden />}
            {name} {textOf(value)} {unit} <small>{limitsText(reading)}</small>
            {isOutside && ` ${t('outside')}`}
          </span>
        );
      })}
    </span>
  );

  function limitsText({ low, high }: Reading): string {
    if (low !== undefined && high !== undefined)
      return `(${t('limits', { low: textOf(low), high: textOf(high) })})`;
    if (low !== undefined) return `(${t('limitLow', { low: textOf(low) })})`;
    return high === undefined ? '' : `(${t('limitHigh', { high: textOf(high) })})`;
  }
}

function isOutsideLimits({ value, low, high }: Reading): boolean {
  if (typeof value !== 'number') return false;
  return (low !== undefined && value < low) || (high !== undefined && value > high);
}
