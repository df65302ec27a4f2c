import { redirect } from 'next/navigation';
import { requirePrincipal } from '@/lib/server/require-principal';

/** The start is the floor: what everyone may see, whatever their role. */
export default async function StartPage(): Promise<never> {
  await requirePrincipal('screen:floor', { returnTo: '/floor' });
  redirect('/floor');
}
