import type { Role } from '@/lib/domain/people/roles';

/** A person who signed in. */
export type PersonPrincipal = { kind: 'person'; badge: string; role: Role };

/** Who asks: the holder of the API token, or a person who signed in. */
export type Principal = { kind: 'token' } | PersonPrincipal;

/** Label of the API token where a badge would stand; no person may have it as a badge. */
export const TOKEN_LABEL = 'token';

/** The name under which the log keeps who brought an event: a badge, or `token`. */
export function principalLabel(principal: Principal): string {
  return principal.kind === 'token' ? TOKEN_LABEL : principal.badge;
}
