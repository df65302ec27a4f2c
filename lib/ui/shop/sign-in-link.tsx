'use client';

import { usePathname } from 'next/navigation';
import { useTranslations } from 'use-intl';
import classes from '@/lib/ui/shop/shop.module.css';

/** The way to sign in again and come back to this screen. */
export function SignInLink() {
  const t = useTranslations('record');
  const returnTo = usePathname();
  return (
    <a className={classes.button} data-look="act" href={`/sign-in?to=${encodeURIComponent(returnTo)}`}>
      {t('signIn')}
    </a>
  );
}
