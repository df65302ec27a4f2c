'use client';

import { FailedPage } from '@/lib/ui/wrong/failed-page';

/** A page that failed, inside the frame that stands. */
export default function PageFailed({
  error,
  reset,
}: {
  error: Error & { digest?: string };
  reset: () => void;
}) {
  return <FailedPage digest={error.digest} retry={reset} />;
}
