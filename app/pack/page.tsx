import { pageTitle } from '@/app/page-words';
import { changePersonAt } from '@/app/station/actions';
import { nameOf } from '@/lib/server/name-of';
import { returnPath } from '@/lib/server/people/return-path';
import { requirePrincipal } from '@/lib/server/require-principal';
import { PackApp } from '@/lib/ui/pack/pack-app';
import { addressCode } from '@/lib/ui/shop/address-code';

export const generateMetadata = pageTitle(({ pack }) => pack.title);

type Search = { code?: unknown; container?: unknown };

/** Where units go into cartons, cartons onto pallets, and pallets to customers. */
export default async function PackPage({ searchParams }: { searchParams: Promise<Search> }) {
  const search = await searchParams;
  const person = await requirePrincipal('screen:pack', { returnTo: returnPath('/pack', search) });
  const { code, container } = search;
  return (
    <PackApp
      person={person}
      name={await nameOf(person.badge)}
      changePerson={changePersonAt.bind(null, '/pack')}
      container={addressCode(container)}
      firstScan={addressCode(code)}
    />
  );
}
