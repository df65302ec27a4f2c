import type { Metadata } from 'next';
import { readCounts } from '@/lib/server/read-counts';
import { requirePrincipal } from '@/lib/server/require-principal';
import { CountsPage } from '@/lib/ui/counts/counts-page';
import { en } from '@/lib/ui/messages/en';

export const metadata: Metadata = { title: en.counts.title };

/** Reels whose counts disagree with what their units used, and the changes that were probably not scanned. */
export default async function CountsThatDisagree() {
  await requirePrincipal('screen:counts', { returnTo: '/counts' });
  return <CountsPage check={await readCounts()} />;
}
