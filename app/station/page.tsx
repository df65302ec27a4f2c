import { pageTitle } from '@/app/page-words';
import { changePersonAt } from '@/app/station/actions';
import { nameOf } from '@/lib/server/name-of';
import { returnPath } from '@/lib/server/people/return-path';
import { requirePrincipal } from '@/lib/server/require-principal';
import { addressCode } from '@/lib/ui/shop/address-code';
import { StationApp } from '@/lib/ui/station/station-app';

export const generateMetadata = pageTitle(({ station }) => station.title);

/** Where units are scanned and results given. */
export default async function StationPage({ searchParams }: { searchParams: Promise<{ code?: unknown }> }) {
  const search = await searchParams;
  const person = await requirePrincipal('screen:station', { returnTo: returnPath('/station', search) });
  const { code } = search;
  return (
    <StationApp
      person={person}
      name={await nameOf(person.badge)}
      changePerson={changePersonAt.bind(null, '/station')}
      firstScan={addressCode(code)}
    />
  );
}
