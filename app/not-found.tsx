import type { Metadata } from 'next';
import { en } from '@/lib/ui/messages/en';
import { NotFoundPage } from '@/lib/ui/wrong/not-found-page';

export const metadata: Metadata = { title: en.wrong.notFound.title };

/** Any address that no page has, for who has a session. */
export default function NotFound() {
  return <NotFoundPage />;
}
