'use client';

import { MantineProvider } from '@mantine/core';
import { type ReactNode, useMemo } from 'react';
import { IntlProvider } from 'use-intl';
import type { Language } from '@/lib/domain/language';
import { useDeviceWords } from '@/lib/ui/messages/use-device-words';
import type { Words } from '@/lib/ui/messages/words';
import { SerialPatterns } from '@/lib/ui/scanning/serial-patterns';
import { cssVariablesResolver, theme } from '@/lib/ui/theme';

/**
 * Theme and words for every screen. The words come with the page and not with its code, so that a language costs no
 * JavaScript. Times are shown in `timeZone`, the plant's own.
 */
export function AppProviders({
  timeZone,
  language = 'en',
  messages,
  serialPatterns = [],
  children,
}: {
  timeZone: string;
  language?: Language;
  messages: Partial<Words>;
  serialPatterns?: readonly string[];
  children: ReactNode;
}) {
  const device = useDeviceWords(useMemo(() => ({ language, messages }), [language, messages]));
  return (
    <MantineProvider theme={theme} cssVariablesResolver={cssVariablesResolver} defaultColorScheme="auto">
      <IntlProvider locale={device.language} messages={device.messages} timeZone={timeZone}>
        <SerialPatterns value={serialPatterns}>{children}</SerialPatterns>
      </IntlProvider>
    </MantineProvider>
  );
}
