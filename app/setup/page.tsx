import { Anchor, Container, Stack, Text, Title } from '@mantine/core';
import type { Metadata } from 'next';
import { createTranslator } from 'use-intl';
import { makeFirstAdministrator } from '@/app/setup/actions';
import { isSetupOpen } from '@/lib/server/people/complete-setup';
import { en } from '@/lib/ui/messages/en';
import { SetupForm } from '@/lib/ui/people/setup-form';

const t = createTranslator({ locale: 'en', messages: en, namespace: 'setup' });

// The address carries a secret: no other site may learn it from a Referer header.
export const metadata: Metadata = { title: t('title'), referrer: 'no-referrer' };

/** Where the one-time link of the first start leads: makes the first administrator. */
export default async function SetupPage({ searchParams }: { searchParams: Promise<{ token?: unknown }> }) {
  const { token } = await searchParams;
  const isOpen = typeof token === 'string' && (await isSetupOpen(token));
  return (
    <Container component="main" size="xs" py="xl">
      <Stack>
        <Title order={1}>{isOpen ? t('title') : t('closed.title')}</Title>
        <Text>{isOpen ? t('hint') : t('closed.text')}</Text>
        {isOpen ? (
          <SetupForm action={makeFirstAdministrator} token={token} />
        ) : (
          <Anchor href="/sign-in">{t('closed.signIn')}</Anchor>
        )}
      </Stack>
    </Container>
  );
}
