import { clearException } from '@/app/exceptions/actions';
import { pageTitle } from '@/app/page-words';
import { voidEvent } from '@/app/unit/actions';
import { may } from '@/lib/domain/people/permissions';
import { readExceptions } from '@/lib/server/read-exceptions';
import { requirePrincipal } from '@/lib/server/require-principal';
import { ExceptionsPage } from '@/lib/ui/exceptions/exceptions-page';

export const generateMetadata = pageTitle(({ exceptions }) => exceptions.title);

/** What broke a rule and was recorded all the same. */
export default async function ExceptionsRoute() {
  const principal = await requirePrincipal('screen:exceptions', { returnTo: '/exceptions' });
  return (
    <ExceptionsPage
      list={await readExceptions()}
      clear={may(principal, 'event:exception.cleared') ? clearException : null}
      reopen={may(principal, 'event:event.voided') ? voidEvent : null}
    />
  );
}
