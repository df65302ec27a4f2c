'use client';

import { MantineProvider } from '@mantine/core';
import type { ReactNode } from 'react';
import { IntlProvider } from 'use-intl';
import { en } from '@/lib/ui/messages/en';
import { cssVariablesResolver, theme } from '@/lib/ui/theme';

/** Theme and words for every screen. Times are shown in `timeZone`, the plant's own. */
export function AppProviders({ timeZone, children }: { timeZone: string; children: ReactNode }) {
  return (
    <MantineProvider theme={theme} cssVariablesResolver={cssVariablesResolver} defaultColorScheme="auto">
      <IntlProvider locale="en" messages={en} timeZone={timeZone}>
        {children}
      </IntlProvider>
    </MantineProvider>
  );
}
