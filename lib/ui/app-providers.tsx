'use client';

import { MantineProvider } from '@mantine/core';
import type { ReactNode } from 'react';
import { IntlProvider } from 'use-intl';
import type { en } from '@/lib/ui/messages/en';
import { SerialPatterns } from '@/lib/ui/scanning/serial-patterns';
import { cssVariablesResolver, theme } from '@/lib/ui/theme';

/**
 * Theme and words for every screen. The words come with the page and not with its code, so that a language costs no
 * JavaScript. Times are shown in `timeZone`, the plant's own.
 */
export function AppProviders({
  timeZone,
  messages,
  serialPatterns = [],
  children,
}: {
  timeZone: string;
  messages: Partial<typeof en>;
  serialPatterns?: readonly string[];
  children: ReactNode;
}) {
  return (
    <MantineProvider theme={theme} cssVariablesResolver={cssVariablesResolver} defaultColorScheme="auto">
      <IntlProvider locale="en" messages={messages} timeZone={timeZone}>
        <SerialPatterns value={serialPatterns}>{children}</SerialPatterns>
      </IntlProvider>
    </MantineProvider>
  );
}
