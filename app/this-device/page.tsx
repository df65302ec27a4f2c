import type { Metadata } from 'next';
import { requirePrincipal } from '@/lib/server/require-principal';
import { en } from '@/lib/ui/messages/en';
import { DevicePage } from '@/lib/ui/scanning/device-page';

export const metadata: Metadata = { title: en.scanning.device.title };

/** What this device alone keeps: how its scanner types. */
export default async function ThisDevicePage() {
  await requirePrincipal('screen:this-device', { returnTo: '/this-device' });
  return <DevicePage />;
}
