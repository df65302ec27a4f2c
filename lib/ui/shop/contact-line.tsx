'use client';

import { IconCloudCheck, IconCloudOff } from '@tabler/icons-react';
import { useSyncExternalStore } from 'react';
import { useTimeZone, useTranslations } from 'use-intl';
import { contactBefore, contactNow, watchContact } from '@/lib/offline/contact';
import { formatClock } from '@/lib/ui/format-moment';
import classes from '@/lib/ui/shop/shop.module.css';

/** What an operator can always see: whether the server answers, what waits for it, and when it last answered. */
export function ContactLine({ waitingCount }: { waitingCount: number }) {
  const t = useTranslations('record.contact');
  const timeZone = useTimeZone() ?? 'UTC';
  const { isOnline, lastAt } = useSyncExternalStore(watchContact, contactNow, contactBefore);
  const Shape = isOnline ? IconCloudCheck : IconCloudOff;
  return (
    <p className={classes.contact}>
      <Shape aria-hidden className={classes.contactShape} />
      <strong className={classes.online} data-online={isOnline}>
        {t(isOnline ? 'online' : 'offline')}
      </strong>
      <span>{t('waiting', { count: waitingCount })}</span>
      {lastAt !== null && <span>{t('last', { clock: formatClock(lastAt, timeZone) })}</span>}
      {/* Of a page that has come from the server and has asked nothing yet there is no more to say. */}
      {lastAt === null && !isOnline && <span>{t('never')}</span>}
    </p>
  );
}
