import { placeHold, releaseHold, scrapUnit, voidEvent } from '@/app/unit/actions';
import { may } from '@/lib/domain/people/permissions';
import type { Principal } from '@/lib/domain/people/principal';
import type { DeskActions } from '@/lib/ui/desk/desk-actions';

/** The desk's actions that someone may do; each checks it again when it is called. */
export function allowedActions(principal: Principal): DeskActions {
  return {
    placeHold: may(principal, 'event:hold.placed') ? placeHold : null,
    releaseHold: may(principal, 'event:hold.released') ? releaseHold : null,
    voidEvent: may(principal, 'event:event.voided') ? voidEvent : null,
    scrapUnit: may(principal, 'event:unit.scrapped') ? scrapUnit : null,
  };
}
