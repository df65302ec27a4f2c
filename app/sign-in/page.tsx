import { Container, Group, Paper, SimpleGrid, Title } from '@mantine/core';
import { redirect } from 'next/navigation';
import { pageTitle, pageWords } from '@/app/page-words';
import { signInAtDesk, signInAtStation } from '@/app/sign-in/actions';
import { currentPrincipal } from '@/lib/server/people/current-principal';
import { safeReturnPath } from '@/lib/server/people/safe-return-path';
import { DeskSignIn } from '@/lib/ui/people/desk-sign-in';
import { StationSignIn } from '@/lib/ui/people/station-sign-in';
import { Brand } from '@/lib/ui/shell/brand';
import { LanguageChoice } from '@/lib/ui/shell/language-choice';

export const generateMetadata = pageTitle(({ signIn }) => signIn.title);

/** Two ways in, side by side: badge and PIN at a shared station, badge and password at a desk. */
export default async function SignInPage({ searchParams }: { searchParams: Promise<{ to?: unknown }> }) {
  const returnTo = safeReturnPath((await searchParams).to);
  if ((await currentPrincipal()) !== null) redirect(returnTo);
  const t = await pageWords();
  return (
    <Container component="main" size="lg" py="xs">
      <Group justify="space-between" mb="xs">
        <Title order={1}>{t('signIn.title')}</Title>
        <Brand />
      </Group>
      <SimpleGrid cols={{ base: 1, sm: 2 }} spacing="lg">
        <Paper withBorder px="lg" py="md">
          <StationSignIn action={signInAtStation} returnTo={returnTo} />
        </Paper>
        <Paper withBorder px="lg" py="md">
          <DeskSignIn action={signInAtDesk} returnTo={returnTo} />
        </Paper>
      </SimpleGrid>
      <Group mt="lg">
        <LanguageChoice />
      </Group>
    </Container>
  );
}
