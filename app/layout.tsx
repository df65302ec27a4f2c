import '@mantine/core/styles.css';
import { ColorSchemeScript, mantineHtmlProps } from '@mantine/core';
import type { Metadata } from 'next';
import type { ReactNode } from 'react';
import { AppProviders } from '@/lib/ui/app-providers';
import { en } from '@/lib/ui/messages/en';

export const metadata: Metadata = { title: { default: en.app.name, template: `%s · ${en.app.name}` } };

export default function RootLayout({ children }: { children: ReactNode }) {
  return (
    <html lang="en" {...mantineHtmlProps}>
      <head>
        <ColorSchemeScript defaultColorScheme="auto" />
      </head>
      <body>
        <AppProviders timeZone="UTC">{children}</AppProviders>
      </body>
    </html>
  );
}
