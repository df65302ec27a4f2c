'use client';

import { useEffect } from 'react';
import type { PersonPrincipal } from '@/lib/domain/people/principal';
import { forgetPresent, presentPerson } from '@/lib/offline/present-person';
import { isServerThere } from '@/lib/offline/read-api';
import { RecordProvider } from '@/lib/ui/record/record-provider';
import { StationDesk } from '@/lib/ui/station/station-desk';

/** What the page of a station knows when it is made. */
export type StationAppProps = {
  person: PersonPrincipal;
  /** The person's name in the plant, or null. */
  name: string | null;
  /** A server action that ends the session and leads to sign in, and back here. */
  changePerson: () => Promise<void>;
  /** A code that was scanned before the page had woken up, or null. */
  firstScan: string | null;
  /** False where the device alone has let this person in. */
  isFromServer?: boolean;
};

/** The station of this tablet: chosen once, then the desk where units are scanned. */
export function StationApp({ changePerson, isFromServer = true, ...props }: StationAppProps) {
  const { person, name } = props;
  const leave = async (): Promise<void> => {
    forgetPresent();
    // Without the server, the page that opens without it asks who comes.
    if (await isServerThere()) await changePerson();
    else location.reload();
  };
  useEffect(() => {
    const present = presentPerson();
    // Somebody else came while there was no server: the session of who was here before is over.
    const isOther = present !== null && !present.isChecked && present.person.badge !== person.badge;
    if (isFromServer && isOther) void changePerson();
  }, [isFromServer, person.badge, changePerson]);
  return (
    <RecordProvider person={person} name={name} isFromServer={isFromServer}>
      <StationDesk {...props} changePerson={leave} />
    </RecordProvider>
  );
}
