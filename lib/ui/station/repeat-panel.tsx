'use client';

import { IconRepeat } from '@tabler/icons-react';
import { useTranslations } from 'use-intl';
import type { Work } from '@/lib/domain/station/session/session';
import { BigButton } from '@/lib/ui/shop/big-button';
import classes from '@/lib/ui/shop/shop.module.css';
import { ProvisionalStrip } from '@/lib/ui/station/provisional-strip';
import type { PanelProps } from '@/lib/ui/station/task-panel';
import { VerdictPanel } from '@/lib/ui/verdict/verdict-panel';

/** The unit has passed what is done here: nobody goes on by habit, but whoever means it presses once. */
export function RepeatPanel({ work, picture, press }: PanelProps & { work: Work }) {
  const t = useTranslations('station');
  const { operation } = picture.station;
  const next = work.about.unit?.next ?? null;
  return (
    <div className={classes.stack}>
      <VerdictPanel
        kind="caution"
        text={
          <>
            <span className={classes.code}>{work.unit}</span>
            <br />
            {t('repeat.text', { operation })}
            <br />
            {next === null ? t('nextDone') : t('next', { ...next, step: String(next.step) })}
          </>
        }
      />
      {work.about.provisional && <ProvisionalStrip provisional={work.about.provisional} />}
      <div className={classes.row}>
        <BigButton look="act" shape={IconRepeat} onPress={() => press({ button: 'go_on' })}>
          {t('repeat.goOn', { operation })}
        </BigButton>
        <BigButton onPress={() => press({ button: 'leave' })}>{t('repeat.leave')}</BigButton>
      </div>
    </div>
  );
}
