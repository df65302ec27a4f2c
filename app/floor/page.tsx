import { pageTitle } from '@/app/page-words';
import { may } from '@/lib/domain/people/permissions';
import { readFloor } from '@/lib/server/read-floor';
import { readPlant } from '@/lib/server/read-plant';
import { requirePrincipal } from '@/lib/server/require-principal';
import { FloorBoard } from '@/lib/ui/floor/floor-board';

export const generateMetadata = pageTitle(({ floor }) => floor.title);

/** For the wall screen and the line lead's desk: what runs, what is stuck, what is held. */
export default async function FloorPage() {
  const principal = await requirePrincipal('screen:floor', { returnTo: '/floor' });
  const { site } = (await readPlant()).file;
  return (
    <FloorBoard
      first={await readFloor()}
      site={site?.name ?? site?.code ?? null}
      maySeeDevices={may(principal, 'screen:devices')}
    />
  );
}
