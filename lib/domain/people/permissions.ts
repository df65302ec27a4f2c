import type { EventType } from '@/lib/domain/events/catalogue';
import type { Principal } from '@/lib/domain/people/principal';
import { ROLES, type Role } from '@/lib/domain/people/roles';

const EVERYONE: readonly Role[] = ROLES;

/** The right to append events of one type; a new type does not compile until it has its row. */
type EventAction = `event:${EventType}`;

const EVENT_ROLES = {
  'event:unit.started': ['operator', 'admin'],
  'event:unit.processed': ['operator', 'qa', 'engineer', 'admin'],
  'event:unit.signed': ['qa', 'admin'],
  'event:unit.joined': ['operator', 'engineer', 'admin'],
  'event:unit.separated': ['operator', 'engineer', 'admin'],
  'event:part.removed': ['operator', 'qa', 'engineer', 'admin'],
  'event:part.installed': ['operator', 'qa', 'engineer', 'admin'],
  'event:unit.scrapped': ['qa', 'engineer', 'admin'],
  'event:unit.packed': ['packer', 'admin'],
  'event:unit.unpacked': ['packer', 'admin'],
  'event:container.nested': ['packer', 'admin'],
  'event:container.unnested': ['packer', 'admin'],
  'event:container.shipped': ['packer', 'admin'],
  'event:unit.returned': ['qa', 'engineer', 'admin'],
  'event:hold.placed': ['qa', 'engineer', 'admin'],
  'event:hold.released': ['qa', 'admin'],
  'event:exception.cleared': ['qa', 'admin'],
  'event:item.received': ['handler', 'admin'],
  'event:item.counted': ['handler', 'admin'],
  'event:item.mounted': ['operator', 'handler', 'admin'],
  'event:item.unmounted': ['operator', 'handler', 'admin'],
  'event:item.spliced': ['operator', 'handler', 'admin'],
  'event:item.inspected': ['handler', 'qa', 'admin'],
  'event:item.retired': ['handler', 'qa', 'admin'],
  'event:device.retired': ['qa', 'engineer', 'admin'],
  'event:label.printed': EVERYONE,
  'event:event.voided': ['qa', 'engineer', 'admin'],
} as const satisfies Record<EventAction, readonly Role[]>;

const OTHER_ROLES = {
  /** Sending events at all; each event's own row decides about it. */
  events: EVERYONE,
  check: EVERYONE,
  trace: EVERYONE,
  narrow: EVERYONE,
  contract: EVERYONE,
  clock: EVERYONE,
  'plant:read': EVERYONE,
  'plant:write': ['admin'],
  'people:manage': ['admin'],
  'screen:floor': EVERYONE,
  'screen:station': ['operator', 'qa', 'engineer', 'admin'],
  'screen:changeover': ['operator', 'handler', 'admin'],
  'screen:items': ['handler', 'qa', 'admin'],
  'screen:counts': ['handler', 'qa', 'engineer', 'admin'],
  'screen:pack': ['packer', 'admin'],
  'screen:returns': ['qa', 'engineer', 'admin'],
  'screen:holds': EVERYONE,
  'screen:exceptions': ['qa', 'engineer', 'admin'],
  'screen:devices': ['qa', 'engineer', 'admin'],
  'screen:trace': EVERYONE,
  'screen:narrow': EVERYONE,
  'screen:unit': EVERYONE,
  'screen:item': EVERYONE,
  'screen:container': EVERYONE,
  'screen:plant': EVERYONE,
  'screen:people': ['admin'],
  'screen:this-device': EVERYONE,
  'screen:labels': EVERYONE,
} as const satisfies Record<string, readonly Role[]>;

/** The one table of what each role may do; routes, actions and screens ask it and nothing else. */
export const PERMISSIONS = { ...EVENT_ROLES, ...OTHER_ROLES };

/** Anything that may be allowed or not. */
export type Action = keyof typeof PERMISSIONS;

/** Whether a principal may do something. The API token may do all but manage people. */
export function may(principal: Principal, action: Action): boolean {
  if (principal.kind === 'token') return action !== 'people:manage' && action !== 'screen:people';
  const roles: readonly Role[] = PERMISSIONS[action];
  return roles.includes(principal.role);
}
