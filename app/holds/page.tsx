import { pageTitle } from '@/app/page-words';
import { changePersonAt } from '@/app/station/actions';
import { holdTargetKindSchema } from '@/lib/domain/events/vocabulary';
import { nameOf } from '@/lib/server/name-of';
import { returnPath } from '@/lib/server/people/return-path';
import { requirePrincipal } from '@/lib/server/require-principal';
import { HoldsApp } from '@/lib/ui/holds/holds-app';
import { addressCode } from '@/lib/ui/shop/address-code';

export const generateMetadata = pageTitle(({ holds }) => holds.title);

type Search = { kind?: unknown; id?: unknown };

/** What may not go on, since when and why. */
export default async function HoldsPage({ searchParams }: { searchParams: Promise<Search> }) {
  const search = await searchParams;
  const person = await requirePrincipal('screen:holds', { returnTo: returnPath('/holds', search) });
  const kind = holdTargetKindSchema.safeParse(search.kind);
  const id = addressCode(search.id);
  return (
    <HoldsApp
      person={person}
      name={await nameOf(person.badge)}
      changePerson={changePersonAt.bind(null, '/holds')}
      target={kind.success && id !== null ? { kind: kind.data, id } : null}
    />
  );
}
