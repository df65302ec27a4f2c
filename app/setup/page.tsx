import { Anchor, Container, Stack, Text, Title } from '@mantine/core';
import type { Metadata } from 'next';
import { pageWords } from '@/app/page-words';
import { makeFirstAdministrator } from '@/app/setup/actions';
import { isSetupOpen } from '@/lib/server/people/complete-setup';
import { SetupForm } from '@/lib/ui/people/setup-form';

// The address carries a secret: no other site may learn it from a Referer header.
export async function generateMetadata(): Promise<Metadata> {
  const t = await pageWords();
  return { title: t('setup.title'), referrer: 'no-referrer' };
}

/** Where the one-time link of the first start leads: makes the first administrator. */
export default async function SetupPage({ searchParams }: { searchParams: Promise<{ token?: unknown }> }) {
  const t = await pageWords();
  const { token } = await searchParams;
  const isOpen = typeof token === 'string' && (await isSetupOpen(token));
  return (
    <Container component="main" size="xs" py="xl">
      <Stack>
        <Title order={1}>{isOpen ? t('setup.title') : t('setup.closed.title')}</Title>
        <Text>{isOpen ? t('setup.hint') : t('setup.closed.text')}</Text>
        {isOpen ? (
          <SetupForm action={makeFirstAdministrator} token={token} />
        ) : (
          <Anchor href="/sign-in">{t('setup.closed.signIn')}</Anchor>
        )}
      </Stack>
    </Container>
  );
}
