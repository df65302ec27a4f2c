'use client';

import { IconCheck } from '@tabler/icons-react';
import { useTranslations } from 'use-intl';
import type { Problem } from '@/lib/domain/station/session/session';
import { BigButton } from '@/lib/ui/shop/big-button';
import classes from '@/lib/ui/shop/shop.module.css';
import { useEventName } from '@/lib/ui/shop/use-event-name';
import { VerdictPanel } from '@/lib/ui/verdict/verdict-panel';

/** Something that was given and that the server refused; it stands there until somebody has read it. */
export function ProblemPanel({ problem, onRead }: { problem: Problem; onRead: () => void }) {
  const t = useTranslations('record.problem');
  const nameOf = useEventName();
  const what = nameOf(problem.type);
  const title = problem.unit === '' ? t('title', { what }) : t('titleOf', { what, subject: problem.unit });
  return (
    <div className={classes.stack} role="alert">
      <VerdictPanel kind="stop" text={title} reasons={problem.reasons} />
      <BigButton look="act" size="huge" shape={IconCheck} onPress={onRead}>
        {t('understood')}
      </BigButton>
    </div>
  );
}
