import '@mantine/core/styles.css';
import '@/app/global.css';
import { ColorSchemeScript, mantineHtmlProps } from '@mantine/core';
import type { Metadata } from 'next';
import type { ReactNode } from 'react';
import { signOut } from '@/app/sign-in/actions';
import { serialPatternsOf } from '@/lib/domain/plant/serial-pattern';
import { currentLanguage } from '@/lib/server/language';
import { navCounts } from '@/lib/server/nav-counts';
import { currentPrincipal } from '@/lib/server/people/current-principal';
import { readPlant } from '@/lib/server/read-plant';
import { settings } from '@/lib/server/settings';
import { AppProviders } from '@/lib/ui/app-providers';
import { compiledWords } from '@/lib/ui/messages/compiled-words';
import { en } from '@/lib/ui/messages/en';
import { PrintColours } from '@/lib/ui/print-colours';
import { DemoStrip } from '@/lib/ui/shell/demo-strip';
import { navScreens } from '@/lib/ui/shell/nav-items';
import { Shell } from '@/lib/ui/shell/shell';

export const metadata: Metadata = {
  manifest: '/manifest.webmanifest',
  appleWebApp: { capable: true, title: en.app.name },
  title: { default: en.app.name, template: `%s · ${en.app.name}` },
};

/** The frame of every page: words and times of the plant, the demo's strip, and the rail for whoever signed in. */
export default async function RootLayout({ children }: { children: ReactNode }) {
  const principal = await currentPrincipal();
  const language = await currentLanguage();
  const { file } = await readPlant();
  const timeZone = file.site?.timeZone ?? 'UTC';
  return (
    <html lang={language} {...mantineHtmlProps}>
      <head>
        <ColorSchemeScript defaultColorScheme="auto" />
        <PrintColours />
      </head>
      <body>
        <AppProviders
          timeZone={timeZone}
          language={language}
          messages={compiledWords(language)}
          serialPatterns={principal === null ? [] : serialPatternsOf(file)}
        >
          {settings().demo && <DemoStrip />}
          {principal === null ? (
            children
          ) : (
            <Shell
              principal={principal}
              screens={navScreens(principal)}
              counts={await navCounts(principal)}
              signOut={signOut}
            >
              {children}
            </Shell>
          )}
        </AppProviders>
      </body>
    </html>
  );
}
