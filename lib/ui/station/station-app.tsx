'use client';

import type { PersonPrincipal } from '@/lib/domain/people/principal';
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
};

/** The station of this tablet: chosen once, then the desk where units are scanned. */
export function StationApp(props: StationAppProps) {
  return (
    <RecordProvider badge={props.person.badge}>
      <StationDesk {...props} />
    </RecordProvider>
  );
}
