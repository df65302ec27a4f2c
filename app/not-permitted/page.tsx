import { Anchor, Button, Container, Stack, Text, Title } from '@mantine/core';
import type { Metadata } from 'next';
import { redirect } from 'next/navigation';
import { createTranslator } from 'use-intl';
import { signOut } from '@/app/sign-in/actions';
import { currentPrincipal } from '@/lib/server/people/current-principal';
import { en } from '@/lib/ui/messages/en';

const t = createTranslator({ locale: 'en', messages: en });

export const metadata: Metadata = { title: t('notPermitted.title') };

/** Says that the role of whoever signed in may not open a screen, and offers to sign in as someone else. */
export default async function NotPermittedPage() {
  const principal = await currentPrincipal();
  if (principal === null) redirect('/sign-in');
  const role = t(`people.role.${principal.role}`);
  return (
    <Container component="main" size="sm" py="xl">
      <Stack align="flex-start">
        <Title order={1}>{t('notPermitted.title')}</Title>
        <Text>{t('notPermitted.text', { badge: principal.badge, role })}</Text>
        <Anchor href="/">{t('notPermitted.home')}</Anchor>
        <form action={signOut}>
          <Button type="submit" variant="default">
            {t('signIn.signOut')}
          </Button>
        </form>
      </Stack>
    </Container>
  );
}
