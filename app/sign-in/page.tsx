import { Container, Paper, SimpleGrid, Title } from '@mantine/core';
import type { Metadata } from 'next';
import { redirect } from 'next/navigation';
import { createTranslator } from 'use-intl';
import { signInAtDesk, signInAtStation } from '@/app/sign-in/actions';
import { currentPrincipal } from '@/lib/server/people/current-principal';
import { safeReturnPath } from '@/lib/server/people/safe-return-path';
import { en } from '@/lib/ui/messages/en';
import { DeskSignIn } from '@/lib/ui/people/desk-sign-in';
import { StationSignIn } from '@/lib/ui/people/station-sign-in';

const t = createTranslator({ locale: 'en', messages: en, namespace: 'signIn' });

export const metadata: Metadata = { title: t('title') };

/** Two ways in, side by side: badge and PIN at a shared station, badge and password at a desk. */
export default async function SignInPage({ searchParams }: { searchParams: Promise<{ to?: unknown }> }) {
  const returnTo = safeReturnPath((await searchParams).to);
  if ((await currentPrincipal()) !== null) redirect(returnTo);
  return (
    <Container component="main" size="lg" py="xl">
      <Title order={1} mb="lg">
        {t('title')}
      </Title>
      <SimpleGrid cols={{ base: 1, sm: 2 }} spacing="lg">
        <Paper withBorder p="lg">
          <StationSignIn action={signInAtStation} returnTo={returnTo} />
        </Paper>
        <Paper withBorder p="lg">
          <DeskSignIn action={signInAtDesk} returnTo={returnTo} />
        </Paper>
      </SimpleGrid>
    </Container>
  );
}
