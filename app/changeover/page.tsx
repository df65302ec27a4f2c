import { pageTitle } from '@/app/page-words';
import { changePersonAt } from '@/app/station/actions';
import { nameOf } from '@/lib/server/name-of';
import { returnPath } from '@/lib/server/people/return-path';
import { requirePrincipal } from '@/lib/server/require-principal';
import { ChangeoverApp } from '@/lib/ui/changeover/changeover-app';
import { addressCode } from '@/lib/ui/shop/address-code';

export const generateMetadata = pageTitle(({ changeover }) => changeover.title);

type Search = { code?: unknown; station?: unknown };

/** Where items go into the slots of a station. */
export default async function ChangeoverPage({ searchParams }: { searchParams: Promise<Search> }) {
  const search = await searchParams;
  const person = await requirePrincipal('screen:changeover', { returnTo: returnPath('/changeover', search) });
  const { code, station } = search;
  return (
    <ChangeoverApp
      person={person}
      name={await nameOf(person.badge)}
      changePerson={changePersonAt.bind(null, '/changeover')}
      station={addressCode(station)}
      firstScan={addressCode(code)}
    />
  );
}
