'use client';

import { IconAlertTriangle } from '@tabler/icons-react';
import { memo } from 'react';
import { useTranslations } from 'use-intl';
import { useRecorder, useRecorderView } from '@/lib/ui/record/record-provider';
import { BigButton } from '@/lib/ui/shop/big-button';
import { ClockStrip } from '@/lib/ui/shop/clock-strip';
import { ContactLine } from '@/lib/ui/shop/contact-line';
import classes from '@/lib/ui/shop/shop.module.css';
import { SignInLink } from '@/lib/ui/shop/sign-in-link';

/** Says whether the server answers and what this device still keeps for it; louder when that is a worry. */
export const SenderStrip = memo(function SenderStrip() {
  const t = useTranslations('record');
  const recorder = useRecorder();
  const { entries, state } = useRecorderView();
  const waiting = entries.filter((entry) => entry.reasons === null);
  const isWorrying = state === 'retrying' || state === 'signed_out' || state === 'clock_ahead';
  return (
    <div className={classes.stack}>
      <ContactLine waitingCount={waiting.length} />
      <ClockStrip />
      <div role="status" className={classes.live}>
        {isWorrying && (waiting.length > 0 || state === 'signed_out') && (
          <div className={classes.strip} data-meaning="caution">
            <IconAlertTriangle aria-hidden />
            <span className={classes.grow}>{t(state, { count: waiting.length })}</span>
            {state === 'signed_out' ? (
              <SignInLink />
            ) : (
              <BigButton onPress={() => recorder.wake()}>{t('sendNow')}</BigButton>
            )}
          </div>
        )}
      </div>
    </div>
  );
});
