import { Alert } from '@mantine/core';
import { IconAlertTriangle } from '@tabler/icons-react';
import { useTranslations } from 'use-intl';
import type { SignInState } from '@/lib/ui/people/sign-in-state';

/** Why nobody was signed in, read out as soon as it stands there. */
export function SignInRefusal({ refusal }: { refusal: SignInState['refusal'] }) {
  const t = useTranslations('signIn.refused');
  if (refusal === null) return null;
  return (
    <Alert role="alert" color="red" variant="outline" icon={<IconAlertTriangle aria-hidden />}>
      {refusal.code === 'too_many_attempts'
        ? t('too_many_attempts', { minutes: Math.ceil(refusal.retryAfterSeconds / 60) })
        : t(refusal.code)}
    </Alert>
  );
}
