'use client';

import { IconCloudOff } from '@tabler/icons-react';
import { useTranslations } from 'use-intl';
import { Screen } from '@/lib/ui/shell/screen';
import { BigButton } from '@/lib/ui/shop/big-button';
import classes from '@/lib/ui/shop/shop.module.css';

/** A screen that cannot do without the server, and the way to the one that can. */
export function NeedsServer() {
  const t = useTranslations('offline');
  return (
    <Screen title={t('needsServer.title')}>
      <div className={classes.shop}>
        <div className={classes.strip} data-meaning="caution" role="status">
          <IconCloudOff aria-hidden />
          <span className={classes.grow}>{t('needsServer.text')}</span>
        </div>
        <div className={classes.row}>
          <BigButton onPress={() => location.reload()}>{t('needsServer.again')}</BigButton>
          <a className={classes.button} data-look="act" href="/station">
            {t('needsServer.station')}
          </a>
        </div>
      </div>
    </Screen>
  );
}
