'use client';

import { IconMapPin, IconUser } from '@tabler/icons-react';
import { memo } from 'react';
import { useTranslations } from 'use-intl';
import { BigButton } from '@/lib/ui/shop/big-button';
import classes from '@/lib/ui/shop/shop.module.css';

/** Who works here, and the ways to change person and station. A scan changes none of it. */
export const PersonBar = memo(function PersonBar({
  badge,
  name,
  changePerson,
  onChangeStation,
}: {
  badge: string;
  name: string | null;
  /** A server action that ends the session and leads to sign in, and back here. */
  changePerson: () => Promise<void>;
  onChangeStation?: (() => void) | undefined;
}) {
  const t = useTranslations('station');
  return (
    <div className={classes.person}>
      <span className={classes.place}>
        <strong>{name ?? badge}</strong>
        {name !== null && <small>{badge}</small>}
      </span>
      <form action={changePerson}>
        <BigButton type="submit" size="small" shape={IconUser} label={t('changePerson')}>
          {t('changePerson')}
        </BigButton>
      </form>
      {onChangeStation !== undefined && (
        <BigButton size="small" shape={IconMapPin} label={t('changeStation')} onPress={onChangeStation}>
          {t('changeStation')}
        </BigButton>
      )}
    </div>
  );
});
