'use client';

import { useSyncExternalStore } from 'react';
import { useTranslations } from 'use-intl';
import { presentPerson } from '@/lib/offline/present-person';
import { NeedsServer } from '@/lib/ui/offline/needs-server';
import { OfflineSignIn } from '@/lib/ui/offline/offline-sign-in';
import { StationApp } from '@/lib/ui/station/station-app';

const STATION_PATHS = ['/station', '/offline', '/'];

/** A station without its server: who is at this device goes on working, and who comes signs in with the device. */
export function OfflineApp() {
  const t = useTranslations('offline');
  const isAwake = useSyncExternalStore(
    () => () => undefined,
    () => true,
    () => false,
  );
  if (!isAwake) return <main>{t('opening')}</main>;
  if (!STATION_PATHS.includes(location.pathname)) return <NeedsServer />;
  const present = presentPerson();
  if (present === null) return <OfflineSignIn />;
  const { person, name } = present;
  return (
    <StationApp
      person={person}
      name={name}
      isFromServer={false}
      firstScan={null}
      changePerson={async () => location.assign('/station')}
    />
  );
}
