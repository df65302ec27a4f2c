'use client';

import { Alert, Button, PasswordInput, Stack, TextInput } from '@mantine/core';
import { useActionState } from 'react';
import { useTranslations } from 'use-intl';
import { type FormFault, useFaultText } from '@/lib/ui/people/form-fault';

/** What the form shows after an attempt: what was typed but the secrets, and the faults. */
export type SetupState = { badge: string; name: string; faults: FormFault[] };

/** The form for the first administrator; `token` is the one-time link's. */
export function SetupForm({
  action,
  token,
}: {
  action: (before: SetupState, form: FormData) => Promise<SetupState>;
  token: string;
}) {
  const t = useTranslations('setup');
  const tSignIn = useTranslations('signIn');
  const [state, submit, isPending] = useActionState(action, { badge: '', name: '', faults: [] });
  const faultOf = useFaultText(state.faults);
  const tokenFault = faultOf('token');
  const secretProps = {
    required: true,
    withAsterisk: false,
    autoComplete: 'new-password',
    visibilityToggleButtonProps: { 'aria-label': tSignIn('showPassword') },
  };
  return (
    <form action={submit}>
      <Stack>
        <input type="hidden" name="token" value={token} />
        <TextInput
          name="badge"
          label={t('badge')}
          description={t('badgeHint')}
          defaultValue={state.badge}
          error={faultOf('badge')}
          required
          withAsterisk={false}
          autoComplete="username"
          autoCapitalize="none"
          spellCheck={false}
        />
        <TextInput
          name="name"
          label={t('name')}
          defaultValue={state.name}
          error={faultOf('name')}
          required
          withAsterisk={false}
          autoComplete="name"
        />
        <PasswordInput
          {...secretProps}
          name="password"
          label={t('password')}
          description={t('passwordHint')}
          error={faultOf('password')}
        />
        <PasswordInput
          {...secretProps}
          name="pin"
          label={t('pin')}
          description={t('pinHint')}
          error={faultOf('pin')}
          inputMode="numeric"
          autoComplete="off"
        />
        {tokenFault !== undefined && (
          <Alert role="alert" color="red" variant="outline">
            {tokenFault}
          </Alert>
        )}
        <Button type="submit" size="md" loading={isPending}>
          {t('submit')}
        </Button>
      </Stack>
    </form>
  );
}
