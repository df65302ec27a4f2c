'use client';

import { IconRefresh } from '@tabler/icons-react';
import { useSyncExternalStore } from 'react';
import { useTranslations } from 'use-intl';
import { isUpdateWaiting, takeUpdate, watchUpdates } from '@/lib/offline/worker-updates';
import { BigButton } from '@/lib/ui/shop/big-button';
import classes from '@/lib/ui/shop/shop.module.css';

/** Offers a new version when no unit is in work; it is never forced. */
export function UpdateStrip({ isIdle }: { isIdle: boolean }) {
  const t = useTranslations('record.update');
  const isWaiting = useSyncExternalStore(watchUpdates, isUpdateWaiting, () => false);
  if (!isWaiting || !isIdle) return null;
  return (
    <div className={classes.strip} data-meaning="act" role="status">
      <IconRefresh aria-hidden />
      <span className={classes.grow}>{t('text')}</span>
      <BigButton onPress={takeUpdate}>{t('take')}</BigButton>
    </div>
  );
}
