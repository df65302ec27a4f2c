'use client';

import { Button, PasswordInput, Stack, Text, TextInput, Title } from '@mantine/core';
import { type FormEvent, type KeyboardEvent, useActionState, useEffect, useId, useRef } from 'react';
import { useTranslations } from 'use-intl';
import { forgetPresent } from '@/lib/offline/present-person';
import { PinKeypad } from '@/lib/ui/people/pin-keypad';
import { SignInRefusal } from '@/lib/ui/people/sign-in-refusal';
import { SIGN_IN_UNTRIED, type SignInAction } from '@/lib/ui/people/sign-in-state';

/**
 * Badge and PIN, for gloves and a scanner: the scanner's Enter after the badge moves on to the PIN, and the PIN has
 * number keys on the screen. The inputs keep what is typed before the page has woken up.
 */
export function StationSignIn({ action, returnTo }: { action: SignInAction; returnTo: string }) {
  const t = useTranslations('signIn');
  const [state, submit, isPending] = useActionState(action, SIGN_IN_UNTRIED);
  const pinInput = useRef<HTMLInputElement>(null);
  const headingId = useId();
  useEffect(() => {
    if (state.refusal !== null) pinInput.current?.focus();
  }, [state]);

  // Whoever was here before is gone, for the pages without the server too.
  useEffect(forgetPresent, []);

  const moveOnToPin = (event: KeyboardEvent): void => {
    if (event.key !== 'Enter' || pinInput.current?.value !== '') return;
    event.preventDefault();
    pinInput.current.focus();
  };

  const noteWhatIsTyped = (event: FormEvent<HTMLFormElement>): void => {
    const form = new FormData(event.currentTarget);
    const [badge, pin] = [form.get('badge'), form.get('secret')];
    if (typeof badge !== 'string' || typeof pin !== 'string') return;
    // A device that cannot keep it asks the server every time.
    void import('@/lib/offline/kept-people')
      .then((people) => people.notePin(badge.trim(), pin))
      .catch(() => undefined);
  };

  return (
    <form action={submit} onSubmit={noteWhatIsTyped} aria-labelledby={headingId}>
      <Stack>
        <Title order={2} id={headingId}>
          {t('station.title')}
        </Title>
        <Text>{t('station.hint')}</Text>
        <input type="hidden" name="to" value={returnTo} />
        <TextInput
          name="badge"
          label={t('badge')}
          defaultValue={state.badge}
          size="xl"
          required
          withAsterisk={false}
          autoFocus
          autoComplete="off"
          autoCapitalize="none"
          spellCheck={false}
          onKeyDown={moveOnToPin}
        />
        <PasswordInput
          ref={pinInput}
          name="secret"
          label={t('pin')}
          size="xl"
          required
          withAsterisk={false}
          inputMode="numeric"
          autoComplete="off"
          visibilityToggleButtonProps={{ 'aria-label': t('showPassword') }}
        />
        <SignInRefusal refusal={state.refusal} />
        <PinKeypad input={pinInput} />
        <Button type="submit" size="xl" loading={isPending}>
          {t('station.submit')}
        </Button>
      </Stack>
    </form>
  );
}
