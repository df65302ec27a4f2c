import { createAccount } from '@/lib/server/people/create-account';
import { DEMO_PEOPLE } from '@/scripts/demo/people';

/** Gives the demo's people their accounts; who has one already keeps it. */
export async function createDemoAccounts(recordedBy: string): Promise<void> {
  for (const { badge, name, role, pin, password } of DEMO_PEOPLE) {
    const form = { badge, name, role, pin, ...(password === null ? {} : { password }) };
    const result = await createAccount(form, recordedBy);
    if (result.ok || result.errors.every(({ code }) => code === 'badge_taken')) continue;
    throw new Error(`The account of ${badge} cannot be made: ${JSON.stringify(result.errors)}`);
  }
}
