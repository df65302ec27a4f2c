'use client';

import type { PersonPrincipal } from '@/lib/domain/people/principal';
import type { Changeover, ChangeoverInput } from '@/lib/domain/station/changeover/changeover';
import { slotsFitting } from '@/lib/domain/station/changeover/slots-fitting';
import type { ChangeoverPicture } from '@/lib/domain/station/changeover-picture';
import { ChangeoverStatus } from '@/lib/ui/changeover/changeover-status';
import { ReturnedCount } from '@/lib/ui/changeover/returned-count';
import { SlotGrid } from '@/lib/ui/changeover/slot-grid';

/** What stands under the scan box: the one thing to know now, a count that may be given, and the slots. */
export function ChangeoverBoard({
  state,
  picture,
  person,
  dispatch,
  onStation,
}: {
  state: Changeover;
  picture: ChangeoverPicture;
  person: PersonPrincipal;
  dispatch: (input: ChangeoverInput) => void;
  onStation: (code: string) => void;
}) {
  const { item, returned, sending, slot } = state;
  return (
    <>
      <ChangeoverStatus state={state} picture={picture} dispatch={dispatch} onStation={onStation} />
      {returned !== null && sending === null && (
        <ReturnedCount key={returned.item} returned={returned} person={person} dispatch={dispatch} />
      )}
      <SlotGrid
        picture={picture}
        chosen={slot}
        wanted={item === null ? [] : slotsFitting(picture.slots, item)}
        dispatch={dispatch}
      />
    </>
  );
}
