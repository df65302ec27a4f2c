'use client';

import type { PersonPrincipal } from '@/lib/domain/people/principal';
import { PackDeskView } from '@/lib/ui/pack/pack-desk-view';
import { RecordProvider } from '@/lib/ui/record/record-provider';

/** What the page of packing knows when it is made. */
export type PackAppProps = {
  person: PersonPrincipal;
  /** The person's name in the plant, or null. */
  name: string | null;
  changePerson: () => Promise<void>;
  /** A container that the address asks for, or null. */
  container: string | null;
  /** A code that was scanned before the page had woken up, or null. */
  firstScan: string | null;
};

/** Packing and shipping. */
export function PackApp(props: PackAppProps) {
  return (
    <RecordProvider person={props.person} name={props.name}>
      <PackDeskView {...props} />
    </RecordProvider>
  );
}
