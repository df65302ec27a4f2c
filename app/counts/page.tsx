import { pageTitle } from '@/app/page-words';
import { readCounts } from '@/lib/server/read-counts';
import { requirePrincipal } from '@/lib/server/require-principal';
import { CountsPage } from '@/lib/ui/counts/counts-page';

export const generateMetadata = pageTitle(({ counts }) => counts.title);

/** Reels whose counts disagree with what their units used, and the changes that were probably not scanned. */
export default async function CountsThatDisagree() {
  await requirePrincipal('screen:counts', { returnTo: '/counts' });
  return <CountsPage check={await readCounts()} />;
}
