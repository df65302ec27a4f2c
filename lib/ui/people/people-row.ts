import type { Role } from '@/lib/domain/people/roles';

/** A badge as the people screen shows it; `account` is null for an operator of the plant who cannot sign in. */
export type PeopleRow = {
  badge: string;
  name: string | null;
  /** Whether the plant file has the badge among its operators. */
  isInPlant: boolean;
  account: {
    role: Role;
    isActive: boolean;
    hasPin: boolean;
    hasPassword: boolean;
    lastSignInAt: Date | null;
  } | null;
};
