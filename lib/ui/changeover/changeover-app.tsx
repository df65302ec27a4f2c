'use client';

import type { PersonPrincipal } from '@/lib/domain/people/principal';
import { ChangeoverDesk } from '@/lib/ui/changeover/changeover-desk';
import { RecordProvider } from '@/lib/ui/record/record-provider';

/** What the page of a changeover knows when it is made. */
export type ChangeoverAppProps = {
  person: PersonPrincipal;
  /** The person's name in the plant, or null. */
  name: string | null;
  changePerson: () => Promise<void>;
  /** A station that the address asks for, or null. */
  station: string | null;
  /** A code that was scanned before the page had woken up, or null. */
  firstScan: string | null;
};

/** Changeover: which station, then items into its slots. */
export function ChangeoverApp(props: ChangeoverAppProps) {
  return (
    <RecordProvider person={props.person} name={props.name}>
      <ChangeoverDesk {...props} />
    </RecordProvider>
  );
}
