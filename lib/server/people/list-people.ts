import type { Account } from '@/lib/data/people/account';
import { listAccounts } from '@/lib/data/people/list-accounts';
import { loadPlant } from '@/lib/data/plant/load-plant';
import { database } from '@/lib/server/database';
import { people } from '@/lib/server/people/people';

/** A badge of the plant: the operator's name, and the account when they may sign in. */
export type Person = { badge: string; name: string | null; isInPlant: boolean; account: Account | null };

/** Everyone with an account, and every operator of the plant without one, by badge. */
export async function listPeople(): Promise<Person[]> {
  const accounts = await listAccounts(people());
  const { plant } = await loadPlant(database().pool);
  const rows = new Map<string, Person>();
  for (const { badge, name } of plant.file.operators ?? [])
    rows.set(badge, { badge, name: name ?? null, isInPlant: true, account: null });
  for (const account of accounts) {
    const { name, isInPlant } = rows.get(account.badge) ?? { name: null, isInPlant: false };
    rows.set(account.badge, { badge: account.badge, name, isInPlant, account });
  }
  return [...rows.values()].sort((a, b) => (a.badge < b.badge ? -1 : 1));
}
