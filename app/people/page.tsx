import { Container, Text, Title } from '@mantine/core';
import type { Metadata } from 'next';
import { createTranslator } from 'use-intl';
import { addPerson, changePerson } from '@/app/people/actions';
import { listPeople } from '@/lib/server/people/list-people';
import { requirePrincipal } from '@/lib/server/require-principal';
import { en } from '@/lib/ui/messages/en';
import { PeopleTable } from '@/lib/ui/people/people-table';

const t = createTranslator({ locale: 'en', messages: en, namespace: 'people' });

export const metadata: Metadata = { title: t('title') };

/** Who may sign in, and as what. */
export default async function PeoplePage() {
  await requirePrincipal('screen:people', { returnTo: '/people' });
  const people = await listPeople();
  return (
    <Container component="main" size="lg" py="lg">
      <Title order={1}>{t('title')}</Title>
      <Text mb="lg">{t('hint')}</Text>
      <PeopleTable people={people} addPerson={addPerson} changePerson={changePerson} />
    </Container>
  );
}
