import type { Metadata } from 'next';
import { createTranslator } from 'use-intl';
import { en } from '@/lib/ui/messages/en';
import { OfflineApp } from '@/lib/ui/offline/offline-app';

const t = createTranslator({ locale: 'en', messages: en, namespace: 'station' });

export const metadata: Metadata = { title: t('title') };

/** The page that a tablet keeps, and opens when there is no server; it is the same for everyone. */
export default function OfflinePage() {
  return <OfflineApp />;
}
