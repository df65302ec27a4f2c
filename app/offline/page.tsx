import { pageTitle } from '@/app/page-words';
import { OfflineApp } from '@/lib/ui/offline/offline-app';

export const generateMetadata = pageTitle(({ station }) => station.title);

/** The page that a tablet keeps, and opens when there is no server; it is the same for everyone. */
export default function OfflinePage() {
  return <OfflineApp />;
}
