import { Container, Text, Title } from '@mantine/core';
import { pageTitle, pageWords } from '@/app/page-words';
import { addPerson, changePerson } from '@/app/people/actions';
import { listPeople } from '@/lib/server/people/list-people';
import { requirePrincipal } from '@/lib/server/require-principal';
import { PeopleTable } from '@/lib/ui/people/people-table';

export const generateMetadata = pageTitle(({ people }) => people.title);

/** Who may sign in, and as what. */
export default async function PeoplePage() {
  await requirePrincipal('screen:people', { returnTo: '/people' });
  const t = await pageWords();
  const people = await listPeople();
  return (
    <Container component="main" size="lg" py="lg">
      <Title order={1}>{t('people.title')}</Title>
      <Text mb="lg">{t('people.hint')}</Text>
      <PeopleTable people={people} addPerson={addPerson} changePerson={changePerson} />
    </Container>
  );
}
