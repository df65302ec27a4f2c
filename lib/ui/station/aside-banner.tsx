'use client';

import { useTranslations } from 'use-intl';
import type { Aside } from '@/lib/domain/station/session/session';
import type { Press } from '@/lib/domain/station/session/session-input';
import { BigButton } from '@/lib/ui/shop/big-button';
import classes from '@/lib/ui/shop/shop.module.css';
import { ProvisionalStrip } from '@/lib/ui/station/provisional-strip';
import { VerdictPanel } from '@/lib/ui/verdict/verdict-panel';

/** A unit was scanned while another one owes its result: which one waits, and its own verdict. */
export function AsideBanner({
  aside,
  inWork,
  press,
}: {
  aside: Aside;
  inWork: string;
  press: (press: Press) => void;
}) {
  const t = useTranslations('station.aside');
  const { unit, verdict } = aside;
  const isStopped = verdict !== null && verdict !== 'unanswered' && !verdict.go;
  const words = (): string => {
    if (verdict === null) return t('asking');
    if (verdict === 'unanswered') return t('unanswered');
    return verdict.go ? t('go') : t('stop');
  };
  return (
    <div className={classes.stack} data-aside={unit}>
      <VerdictPanel
        kind={isStopped ? 'stop' : 'wait'}
        text={
          <>
            <span className={classes.code}>{unit}</span>
            {': '}
            {words()}
            <br />
            {t('first', { unit: inWork })}
          </>
        }
        reasons={isStopped ? verdict.reasons : []}
      />
      {verdict !== null && verdict !== 'unanswered' && verdict.provisional && (
        <ProvisionalStrip provisional={verdict.provisional} isStopped={isStopped} />
      )}
      <div className={classes.row}>
        <BigButton onPress={() => press({ button: 'acknowledge' })}>
          {t('understood', { unit: inWork })}
        </BigButton>
        <BigButton look="quiet" onPress={() => press({ button: 'drop_waiting', unit })}>
          {t('drop', { unit })}
        </BigButton>
      </div>
    </div>
  );
}
