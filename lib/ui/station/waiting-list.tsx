'use client';

import { IconX } from '@tabler/icons-react';
import { useTranslations } from 'use-intl';
import { scanCommand } from '@/lib/domain/station/scan-command';
import type { Session } from '@/lib/domain/station/session/session';
import type { Press } from '@/lib/domain/station/session/session-input';
import { BigButton } from '@/lib/ui/shop/big-button';
import classes from '@/lib/ui/shop/shop.module.css';

/** Units that were scanned while another one was in work; nothing scanned is lost. */
export function WaitingList({ session, press }: { session: Session; press: (press: Press) => void }) {
  const t = useTranslations('station.waiting');
  const { waiting, held } = session;
  const codes = held.filter((code) => scanCommand(code) === null);
  if (waiting.length + codes.length === 0) return null;
  return (
    <section className={classes.card} aria-label={t('title')}>
      <h2>{t('title')}</h2>
      <ul className={classes.list}>
        {waiting.map((unit) => (
          <li key={unit}>
            <span className={classes.code}>{unit}</span>
            <BigButton
              look="quiet"
              shape={IconX}
              label={t('drop', { unit })}
              onPress={() => press({ button: 'drop_waiting', unit })}
            >
              {''}
            </BigButton>
          </li>
        ))}
        {codes.map((code, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: the same code may be scanned twice
          <li key={`${index} ${code}`}>
            <span className={classes.code}>{code}</span>
          </li>
        ))}
      </ul>
    </section>
  );
}
