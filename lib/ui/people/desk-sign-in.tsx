'use client';

import { Button, PasswordInput, Stack, Text, TextInput, Title } from '@mantine/core';
import { useActionState, useId } from 'react';
import { useTranslations } from 'use-intl';
import { SignInRefusal } from '@/lib/ui/people/sign-in-refusal';
import { SIGN_IN_UNTRIED, type SignInAction } from '@/lib/ui/people/sign-in-state';

/** Badge and password, for a keyboard and a password manager. */
export function DeskSignIn({ action, returnTo }: { action: SignInAction; returnTo: string }) {
  const t = useTranslations('signIn');
  const [state, submit, isPending] = useActionState(action, SIGN_IN_UNTRIED);
  const headingId = useId();
  return (
    <form action={submit} aria-labelledby={headingId}>
      <Stack>
        <Title order={2} id={headingId}>
          {t('desk.title')}
        </Title>
        <Text>{t('desk.hint')}</Text>
        <input type="hidden" name="to" value={returnTo} />
        <TextInput
          name="badge"
          label={t('badge')}
          defaultValue={state.badge}
          size="md"
          required
          withAsterisk={false}
          autoComplete="username"
          autoCapitalize="none"
          spellCheck={false}
        />
        <PasswordInput
          name="secret"
          label={t('password')}
          size="md"
          required
          withAsterisk={false}
          autoComplete="current-password"
          visibilityToggleButtonProps={{ 'aria-label': t('showPassword') }}
        />
        <SignInRefusal refusal={state.refusal} />
        <Button type="submit" size="md" loading={isPending}>
          {t('desk.submit')}
        </Button>
      </Stack>
    </form>
  );
}
