import { z } from 'zod';
import type { PeopleDb } from '@/lib/data/people/people-db';
import type { Role } from '@/lib/domain/people/roles';

const rowsSchema = z.array(z.object({ badge: z.string() }));

/** What to change; an omitted field stays. */
export type AccountChange = {
  badge: string;
  role?: Role | undefined;
  pinHash?: string | undefined;
  passwordHash?: string | undefined;
  isActive?: boolean | undefined;
};

/**
 * Changes an account and ends its sessions. Nothing changes when it would leave no active administrator: the rows of
 * all of them are locked first, so that two of them cannot take the role from each other at once.
 */
export async function changeAccount(
  db: PeopleDb,
  change: AccountChange,
): Promise<'changed' | 'unknown_badge' | 'last_administrator'> {
  const { badge, ...fields } = change;
  const data = Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined));
  const endsAdministration = change.isActive === false || (change.role ?? 'admin') !== 'admin';
  return db.$transaction(async (tx) => {
    const administrators = rowsSchema.parse(
      await tx.$queryRaw`
        select badge from auth.account where role = 'admin' and is_active order by badge for update`,
    );
    const isLast = administrators.length === 1 && administrators[0]?.badge === badge;
    if (isLast && endsAdministration) return 'last_administrator';
    const { count } = await tx.account.updateMany({
      where: { badge },
      data: { ...data, sessionEpoch: { increment: 1 } },
    });
    return count === 1 ? 'changed' : 'unknown_badge';
  });
}
