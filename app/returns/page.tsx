import { pageTitle } from '@/app/page-words';
import { changePersonAt } from '@/app/station/actions';
import { nameOf } from '@/lib/server/name-of';
import { returnPath } from '@/lib/server/people/return-path';
import { requirePrincipal } from '@/lib/server/require-principal';
import { ReturnsApp } from '@/lib/ui/returns/returns-app';
import { addressCode } from '@/lib/ui/shop/address-code';

export const generateMetadata = pageTitle(({ returns }) => returns.title);

/** Where units that came back from customers are received. */
export default async function ReturnsPage({ searchParams }: { searchParams: Promise<{ code?: unknown }> }) {
  const search = await searchParams;
  const person = await requirePrincipal('screen:returns', { returnTo: returnPath('/returns', search) });
  const { code } = search;
  return (
    <ReturnsApp
      person={person}
      name={await nameOf(person.badge)}
      changePerson={changePersonAt.bind(null, '/returns')}
      firstScan={addressCode(code)}
    />
  );
}
