import { notFound } from 'next/navigation';
import { requirePrincipal } from '@/lib/server/require-principal';

/** Addresses that no page has: without a session they lead to sign in like every other, so that nothing is told. */
export default async function UnknownPage(): Promise<never> {
  await requirePrincipal('screen:floor');
  notFound();
}
