import { type Role, roleSchema } from '@/lib/domain/people/roles';

/** A person who may sign in, as everyone but sign-in may see them. Times are instants of the server's clock. */
export type Account = {
  badge: string;
  role: Role;
  isActive: boolean;
  /** Counts up when PIN, password, role or activity change: a session of an older epoch is over. */
  sessionEpoch: number;
  hasPin: boolean;
  hasPassword: boolean;
  lastSignInAt: Date | null;
};

/** A row of auth.account as Prisma gives it. */
export type AccountRow = {
  badge: string;
  role: string;
  pinHash: string | null;
  passwordHash: string | null;
  isActive: boolean;
  sessionEpoch: number;
  lastSignInAt: Date | null;
};

/** Reads a row; throws when a newer Reelkin wrote a role that this one does not know. */
export function accountOf(row: AccountRow): Account {
  return {
    badge: row.badge,
    role: roleSchema.parse(row.role),
    isActive: row.isActive,
    sessionEpoch: row.sessionEpoch,
    hasPin: row.pinHash !== null,
    hasPassword: row.passwordHash !== null,
    lastSignInAt: row.lastSignInAt,
  };
}
