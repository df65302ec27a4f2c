'use client';

import { IconCheck } from '@tabler/icons-react';
import { useEffect, useState } from 'react';
import { useTranslations } from 'use-intl';
import { useRecorder, useRecorderView } from '@/lib/ui/record/record-provider';
import { BigButton } from '@/lib/ui/shop/big-button';
import classes from '@/lib/ui/shop/shop.module.css';
import { giveSignal } from '@/lib/ui/shop/signals';
import { subjectOf } from '@/lib/ui/shop/subject-of';
import { useEventName } from '@/lib/ui/shop/use-event-name';
import { VerdictPanel } from '@/lib/ui/verdict/verdict-panel';

/**
 * Refusals that came when nobody was there to read them, such as after a reload; each stands until it is read. What
 * this page has sent itself is shown where it was sent.
 */
export function RefusedPanel() {
  const t = useTranslations('record.problem');
  const nameOf = useEventName();
  const recorder = useRecorder();
  const { entries } = useRecorderView();
  const [refused] = entries.filter((entry) => entry.reasons !== null && !recorder.isAwaited(entry.id));
  const id = refused?.id;
  const [heard, setHeard] = useState<string | undefined>(undefined);
  useEffect(() => {
    if (id === undefined || id === heard) return;
    setHeard(id);
    giveSignal('stop');
  }, [id, heard]);
  if (refused === undefined || refused.reasons === null) return null;
  const what = nameOf(refused.event.type);
  const subject = subjectOf(refused.event);
  return (
    <div className={classes.stack} role="alert">
      <VerdictPanel
        kind="stop"
        text={subject === '' ? t('title', { what }) : t('titleOf', { what, subject })}
        reasons={refused.reasons}
      />
      <BigButton look="act" size="huge" shape={IconCheck} onPress={() => void recorder.forget(refused.id)}>
        {t('understood')}
      </BigButton>
    </div>
  );
}
