import { Anchor } from '@mantine/core';
import { redirect } from 'next/navigation';
import { pageTitle, pageWords } from '@/app/page-words';
import { currentPrincipal } from '@/lib/server/people/current-principal';
import { Screen } from '@/lib/ui/shell/screen';

export const generateMetadata = pageTitle(({ notPermitted }) => notPermitted.title);

/** Says that the role of whoever signed in may not open a screen; the frame around it offers to sign out. */
export default async function NotPermittedPage() {
  const principal = await currentPrincipal();
  if (principal === null) redirect('/sign-in');
  const t = await pageWords();
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
