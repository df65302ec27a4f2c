'use client';

import type { ReactNode } from 'react';
import { useTranslations } from 'use-intl';
import type { PersonPrincipal } from '@/lib/domain/people/principal';
import { RecordProvider, useRecorder } from '@/lib/ui/record/record-provider';
import { Screen } from '@/lib/ui/shell/screen';
import { PersonBar } from '@/lib/ui/shop/person-bar';
import { RefusedPanel } from '@/lib/ui/shop/refused-panel';
import { SenderStrip } from '@/lib/ui/shop/sender-strip';
import classes from '@/lib/ui/shop/shop.module.css';

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
  return (
    <RecordProvider badge={person.badge}>
      <Screen
        title={title}
        beside={<PersonBar badge={person.badge} name={name} changePerson={changePerson} />}
      >
        <div className={classes.shop}>
          <SenderStrip badge={person.badge} />
          <RefusedPanel />
          <Awake>{children}</Awake>
        </div>
      </Screen>
    </RecordProvider>
  );
}

/** Until the page has woken up nothing could be recorded. */
function Awake({ children }: { children: ReactNode }) {
  const t = useTranslations('record');
  return useRecorder() === null ? <p className={classes.quiet}>{t('loading')}</p> : children;
}
