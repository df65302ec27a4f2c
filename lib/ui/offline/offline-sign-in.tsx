'use client';

import { Container, Paper } from '@mantine/core';
import { IconCloudOff } from '@tabler/icons-react';
import { useTranslations } from 'use-intl';
import { signInOffline } from '@/lib/offline/kept-people';
import { keepPresent } from '@/lib/offline/present-person';
import { isServerThere } from '@/lib/offline/read-api';
import type { SignInState } from '@/lib/ui/people/sign-in-state';
import { StationSignIn } from '@/lib/ui/people/station-sign-in';
import classes from '@/lib/ui/shop/shop.module.css';

/** Badge and PIN without the server: for people who signed in on this device lately. */
export function OfflineSignIn() {
  const t = useTranslations('offline.signIn');
  return (
    <Container component="main" size="sm" py="md">
      <div className={classes.shop}>
        <h1>{t('title')}</h1>
        <p className={classes.strip} data-meaning="caution">
          <IconCloudOff aria-hidden />
          <span className={classes.grow}>{t('text')}</span>
        </p>
        <Paper withBorder px="lg" py="md">
          <StationSignIn action={signIn} returnTo="/station" />
        </Paper>
      </div>
    </Container>
  );
}

async function signIn(_before: SignInState, form: FormData): Promise<SignInState> {
  const badge = textOf(form, 'badge').trim();
  if (await isServerThere()) {
    location.assign('/station');
    return { badge, refusal: null };
  }
  const result = await signInOffline(badge, textOf(form, 'secret'));
  if (!result.ok) return { badge, refusal: refusalOf(result) };
  keepPresent(result.present);
  location.reload();
  return { badge, refusal: null };
}

function refusalOf(
  result: Extract<Awaited<ReturnType<typeof signInOffline>>, { ok: false }>,
): SignInState['refusal'] {
  switch (result.why) {
    case 'unknown_here':
      return { code: 'unknown_here' };
    case 'wrong_pin':
      return { code: 'wrong_credentials' };
    case 'wait':
      return {
        code: 'too_many_attempts',
        retryAfterSeconds: Math.ceil((result.untilMs - Date.now()) / 1000),
      };
    default:
      return result satisfies never;
  }
}

function textOf(form: FormData, name: string): string {
  const value = form.get(name);
  return typeof value === 'string' ? value : '';
}
