import { z } from 'zod';
import type { PeopleDb } from '@/lib/data/people/people-db';
import type { Role } from '@/lib/domain/people/roles';

/** What to change; an omitted field stays. */
export type AccountChange = {
  badge: string;
  role?: Role | undefined;
  pinHash?: string | undefined;
  passwordHash?: string | undefined;
  isActive?: boolean | undefined;
};

const lockedSchema = z.array(z.object({ badge: z.string(), isAdministrator: z.boolean() }));

/**
 * Changes an account and ends its sessions, unless it is so already. Nothing changes when it would leave no active
 * administrator: their rows are locked first, so that two of them cannot take the role from each other at once.
 */
export async function changeAccount(
  db: PeopleDb,
  change: AccountChange,
): Promise<'changed' | 'unknown_badge' | 'last_administrator'> {
  const { badge, ...fields } = change;
  const endsAdministration = change.isActive === false || (change.role ?? 'admin') !== 'admin';
  return db.$transaction(async (tx) => {
    const locked = lockedSchema.parse(
      await tx.$queryRaw`
        select badge, role = 'admin' and is_active as "isAdministrator" from auth.account
        where badge = ${badge} or (role = 'admin' and is_active) order by badge for update`,
    );
    const administrators = locked.filter((row) => row.isAdministrator);
    const isLast = administrators.length === 1 && administrators[0]?.badge === badge;
    if (isLast && endsAdministration) return 'last_administrator';

    const before = await tx.account.findUnique({ where: { badge } });
    if (before === null) return 'unknown_badge';
    const after = {
      role: fields.role ?? before.role,
      isActive: fields.isActive ?? before.isActive,
      pinHash: fields.pinHash ?? before.pinHash,
      passwordHash: fields.passwordHash ?? before.passwordHash,
    };
    const isSame =
      after.role === before.role &&
      after.isActive === before.isActive &&
      after.pinHash === before.pinHash &&
      after.passwordHash === before.passwordHash;
    if (!isSame)
      await tx.account.update({ where: { badge }, data: { ...after, sessionEpoch: { increment: 1 } } });
    return 'changed';
  });
}
