import { pageTitle } from '@/app/page-words';
import { requirePrincipal } from '@/lib/server/require-principal';
import { DevicePage } from '@/lib/ui/scanning/device-page';

export const generateMetadata = pageTitle(({ scanning }) => scanning.device.title);

/** What this device alone keeps: how its scanner types. */
export default async function ThisDevicePage() {
  await requirePrincipal('screen:this-device', { returnTo: '/this-device' });
  return <DevicePage />;
}
