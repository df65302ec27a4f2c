import { retireDevice } from '@/app/devices/actions';
import { pageTitle } from '@/app/page-words';
import { voidEvent } from '@/app/unit/actions';
import { may } from '@/lib/domain/people/permissions';
import { readDevices } from '@/lib/server/read-devices';
import { requirePrincipal } from '@/lib/server/require-principal';
import { DevicesPage } from '@/lib/ui/devices/devices-page';

export const generateMetadata = pageTitle(({ devices }) => devices.title);

/** Which devices record, and which of them still owe events. */
export default async function DevicesRoute() {
  const principal = await requirePrincipal('screen:devices', { returnTo: '/devices' });
  return (
    <DevicesPage
      list={await readDevices()}
      retire={may(principal, 'event:device.retired') ? retireDevice : null}
      bringBack={may(principal, 'event:event.voided') ? voidEvent : null}
    />
  );
}
