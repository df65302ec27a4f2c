'use client';

import { useTranslations } from 'use-intl';
import { BigButton } from '@/lib/ui/shop/big-button';
import classes from '@/lib/ui/shop/shop.module.css';
import { SignInLink } from '@/lib/ui/shop/sign-in-link';
import type { Reading } from '@/lib/ui/shop/use-reading';

/** Why a screen has nothing to show, and the way out; says that it loads while nothing is known. */
export function TroublePanel({
  trouble,
  onRetry,
}: {
  trouble: Reading<unknown>['trouble'];
  onRetry: () => void;
}) {
  const t = useTranslations('record');
  if (trouble === null) return <p className={classes.quiet}>{t('loading')}</p>;
  const text = trouble === 'malformed' ? 'not_found' : trouble;
  return (
    <div className={classes.strip} data-meaning="caution" role="status">
      <span className={classes.grow}>{t(`trouble.${text}`)}</span>
      {trouble === 'signed_out' ? <SignInLink /> : <BigButton onPress={onRetry}>{t('tryAgain')}</BigButton>}
    </div>
  );
}
