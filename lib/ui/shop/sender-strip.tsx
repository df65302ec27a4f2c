'use client';

import { IconAlertTriangle, IconCloudUp } from '@tabler/icons-react';
import { useTranslations } from 'use-intl';
import { useRecorder, useRecorderView } from '@/lib/ui/record/record-provider';
import { BigButton } from '@/lib/ui/shop/big-button';
import { ClockStrip } from '@/lib/ui/shop/clock-strip';
import classes from '@/lib/ui/shop/shop.module.css';
import { SignInLink } from '@/lib/ui/shop/sign-in-link';

/** Says what this device still keeps for the server; nothing while the server has everything. */
export function SenderStrip({ badge }: { badge: string }) {
  const t = useTranslations('record');
  const recorder = useRecorder();
  const { entries, state } = useRecorderView();
  const waiting = entries.filter((entry) => entry.reasons === null);
  const own = waiting.filter((entry) => entry.badge === badge);
  const others = waiting.filter((entry) => entry.badge !== badge);
  const isWorrying = state === 'retrying' || state === 'signed_out' || state === 'clock_ahead';
  return (
    <>
      <ClockStrip />
      <div role="status">
        {isWorrying && (own.length > 0 || state === 'signed_out') && (
          <div className={classes.strip} data-meaning="caution">
            <IconAlertTriangle aria-hidden />
            <span className={classes.grow}>{t(state, { count: own.length })}</span>
            {state === 'signed_out' ? (
              <SignInLink />
            ) : (
              <BigButton onPress={() => recorder.wake()}>{t('sendNow')}</BigButton>
            )}
          </div>
        )}
        {others.length > 0 && (
          <div className={classes.strip} data-meaning="caution">
            <IconCloudUp aria-hidden />
            <span className={classes.grow}>
              {t('others', {
                count: others.length,
                badges: [...new Set(others.map((entry) => entry.badge))].join(', '),
              })}
            </span>
          </div>
        )}
      </div>
    </>
  );
}
