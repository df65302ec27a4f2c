'use client';

import '@mantine/core/styles.css';
import '@/app/global.css';
import { AppProviders } from '@/lib/ui/app-providers';
import { wrong } from '@/lib/ui/messages/en/wrong';
import { FailedPage } from '@/lib/ui/wrong/failed-page';

/** The frame itself failed, for example without a database: a page that needs nothing from the server. */
export default function FrameFailed({
  error,
  reset,
}: {
  error: Error & { digest?: string };
  reset: () => void;
}) {
  return (
    <html lang="en">
      <body>
        <AppProviders timeZone="UTC" messages={{ wrong }}>
          <FailedPage digest={error.digest} retry={reset} />
        </AppProviders>
      </body>
    </html>
  );
}
