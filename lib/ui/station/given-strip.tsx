'use client';

import {
  type Icon,
  IconCheck,
  IconDeviceTablet,
  IconHandStop,
  IconHourglass,
  IconX,
} from '@tabler/icons-react';
import { useTranslations } from 'use-intl';
import type { Given, Task } from '@/lib/domain/station/session/session';
import classes from '@/lib/ui/shop/shop.module.css';

const LOOKS: Record<'recorded' | 'kept' | 'refused' | 'sending', { meaning: string; shape: Icon }> = {
  recorded: { meaning: 'go', shape: IconCheck },
  kept: { meaning: 'caution', shape: IconDeviceTablet },
  refused: { meaning: 'stop', shape: IconHandStop },
  sending: { meaning: 'act', shape: IconHourglass },
};

/** A fail that was recorded is no success of the unit: its own shape and colour. */
const FAIL_LOOK = { meaning: 'caution', shape: IconX };

/** What was given last, and whether the server has it. */
export function GivenStrip({ given, task }: { given: Given; task: Task }) {
  const t = useTranslations('station.given');
  if (task.step === 'signing') return null;
  const state = given.answer ?? 'sending';
  const isFail = given.what === 'fail' && state === 'recorded';
  const { meaning, shape: Shape } = isFail ? FAIL_LOOK : LOOKS[state];
  // Once the next unit is looked at, what is done stays quietly in sight.
  const isQuiet = (state === 'recorded' || state === 'kept') && task.step !== 'idle';
  return (
    <p
      className={classes.strip}
      data-meaning={isQuiet ? undefined : meaning}
      data-given={state}
      role="status"
    >
      <Shape aria-hidden />
      <span className={classes.grow}>
        <span className={classes.code}>{given.unit}</span>: <strong>{t(`${state}.${given.what}`)}</strong>
      </span>
    </p>
  );
}
