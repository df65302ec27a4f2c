import { pageTitle } from '@/app/page-words';
import { NotFoundPage } from '@/lib/ui/wrong/not-found-page';

export const generateMetadata = pageTitle(({ wrong }) => wrong.notFound.title);

/** Any address that no page has, for who has a session. */
export default function NotFound() {
  return <NotFoundPage />;
}
