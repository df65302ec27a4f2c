'use client';

import { useEffect } from 'react';
import { useTranslations } from 'use-intl';
import type { Press } from '@/lib/domain/station/session/session-input';
import { BigButton } from '@/lib/ui/shop/big-button';
import classes from '@/lib/ui/shop/shop.module.css';
import { SignInLink } from '@/lib/ui/shop/sign-in-link';
import type { TaskAt } from '@/lib/ui/station/panel-task';
import { VerdictPanel } from '@/lib/ui/verdict/verdict-panel';

const TRY_AGAIN_MS = 3000;

/** The server said nothing about a unit: it is asked again by itself, and nobody has to scan again. */
export function UnansweredPanel({
  task,
  press,
}: {
  task: TaskAt<'unanswered'>;
  press: (press: Press) => void;
}) {
  const t = useTranslations('station');
  const { unit, why } = task;
  useEffect(() => {
    if (why !== 'unreachable') return;
    const timer = setTimeout(() => press({ button: 'retry' }), TRY_AGAIN_MS);
    return () => clearTimeout(timer);
  }, [why, press]);
  return (
    <div className={classes.stack}>
      <VerdictPanel kind="busy" text={t(`unanswered.${why}`, { unit })} />
      <div className={classes.row}>
        {why === 'signed_out' ? (
          <SignInLink />
        ) : (
          <BigButton look="act" onPress={() => press({ button: 'retry' })}>
            {t('retry')}
          </BigButton>
        )}
        <BigButton look="quiet" onPress={() => press({ button: 'leave' })}>
          {t('leave')}
        </BigButton>
      </div>
    </div>
  );
}
