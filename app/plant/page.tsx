import { pageTitle } from '@/app/page-words';
import { may } from '@/lib/domain/people/permissions';
import { readPlant } from '@/lib/server/read-plant';
import { requirePrincipal } from '@/lib/server/require-principal';
import { PlantPage } from '@/lib/ui/plant/plant-page';

export const generateMetadata = pageTitle(({ plant }) => plant.title);

/** What the plant is made of; an administrator gives it a new plant file here. */
export default async function PlantRoute() {
  const principal = await requirePrincipal('screen:plant', { returnTo: '/plant' });
  const { file } = await readPlant();
  return <PlantPage file={file} canWrite={may(principal, 'plant:write')} />;
}
