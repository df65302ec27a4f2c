'use client';

import type { ReactNode } from 'react';
import type { PersonPrincipal } from '@/lib/domain/people/principal';
import { RecordProvider } from '@/lib/ui/record/record-provider';
import { Screen } from '@/lib/ui/shell/screen';
import { PersonBar } from '@/lib/ui/shop/person-bar';
import { RefusedPanel } from '@/lib/ui/shop/refused-panel';
import { SenderStrip } from '@/lib/ui/shop/sender-strip';
import classes from '@/lib/ui/shop/shop.module.css';
import { useFocusRescue } from '@/lib/ui/shop/use-focus-rescue';

/** The frame of a screen that records facts: title, who, what still waits on this device, then the screen itself. */
export function DeskFrame({
  title,
  person,
  name,
  changePerson,
  children,
}: {
  title: string;
  person: PersonPrincipal;
  name: string | null;
  changePerson: () => Promise<void>;
  children: ReactNode;
}) {
  useFocusRescue('');
  return (
    <RecordProvider person={person} name={name}>
      <Screen
        title={title}
        beside={<PersonBar badge={person.badge} name={name} changePerson={changePerson} />}
      >
        <div className={classes.shop}>
          <SenderStrip />
          <RefusedPanel />
          {children}
        </div>
      </Screen>
    </RecordProvider>
  );
}
