import { Anchor } from '@mantine/core';
import type { Metadata } from 'next';
import { redirect } from 'next/navigation';
import { createTranslator } from 'use-intl';
import { currentPrincipal } from '@/lib/server/people/current-principal';
import { en } from '@/lib/ui/messages/en';
import { Screen } from '@/lib/ui/shell/screen';

const t = createTranslator({ locale: 'en', messages: en });

export const metadata: Metadata = { title: t('notPermitted.title') };

/** Says that the role of whoever signed in may not open a screen; the frame around it offers to sign out. */
export default async function NotPermittedPage() {
  const principal = await currentPrincipal();
  if (principal === null) redirect('/sign-in');
  const role = t(`people.role.${principal.role}`);
  return (
    <Screen title={t('notPermitted.title')}>
      <p>{t('notPermitted.text', { badge: principal.badge, role })}</p>
      <p>
        <Anchor href="/">{t('notPermitted.home')}</Anchor>
      </p>
    </Screen>
  );
}
