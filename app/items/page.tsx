import { pageTitle } from '@/app/page-words';
import { changePersonAt } from '@/app/station/actions';
import { nameOf } from '@/lib/server/name-of';
import { returnPath } from '@/lib/server/people/return-path';
import { requirePrincipal } from '@/lib/server/require-principal';
import { ItemsApp } from '@/lib/ui/items/items-app';
import { addressCode } from '@/lib/ui/shop/address-code';

export const generateMetadata = pageTitle(({ items }) => items.title);

/** Where items are booked in, counted, inspected and retired. */
export default async function ItemsPage({ searchParams }: { searchParams: Promise<{ code?: unknown }> }) {
  const search = await searchParams;
  const person = await requirePrincipal('screen:items', { returnTo: returnPath('/items', search) });
  const { code } = search;
  return (
    <ItemsApp
      person={person}
      name={await nameOf(person.badge)}
      changePerson={changePersonAt.bind(null, '/items')}
      firstScan={addressCode(code)}
    />
  );
}
