'use client';

import { useState } from 'react';
import { useTranslations } from 'use-intl';
import type { PersonPrincipal } from '@/lib/domain/people/principal';
import { ChangeoverDesk } from '@/lib/ui/changeover/changeover-desk';
import { RecordProvider, useRecorder } from '@/lib/ui/record/record-provider';
import { Screen } from '@/lib/ui/shell/screen';
import classes from '@/lib/ui/shop/shop.module.css';
import { StationChoice } from '@/lib/ui/shop/station-choice-later';
import { useKeptChoice } from '@/lib/ui/shop/use-kept-choice';

/** Key under which a device keeps whose slots were changed last. */
const CHANGEOVER_KEY = 'reelkin.changeover';

type Props = {
  person: PersonPrincipal;
  /** The person's name in the plant, or null. */
  name: string | null;
  changePerson: () => Promise<void>;
  /** A station that the address asks for, or null. */
  station: string | null;
  /** A code that was scanned before the page had woken up, or null. */
  firstScan: string | null;
};

/** Changeover: which station, then items into its slots. */
export function ChangeoverApp(props: Props) {
  return (
    <RecordProvider badge={props.person.badge}>
      <ChosenStation {...props} />
    </RecordProvider>
  );
}

function ChosenStation({ person, name, changePerson, station: asked, firstScan }: Props) {
  const t = useTranslations();
  const [kept, choose] = useKeptChoice(CHANGEOVER_KEY);
  const recorder = useRecorder();
  const [address, setAddress] = useState(asked);
  const station = address ?? kept;
  const goTo = (code: string | null): void => {
    // The address may name a station, and must not name another one than the screen.
    window.history.replaceState(null, '', '/changeover');
    setAddress(null);
    choose(code);
  };
  if (station === undefined || recorder === null)
    return (
      <Screen title={t('changeover.title')}>
        <p className={classes.quiet}>{t('record.loading')}</p>
      </Screen>
    );
  if (station === null)
    return (
      <Screen title={t('changeover.title')}>
        <div className={classes.shop}>
          <StationChoice onChoose={goTo} />
        </div>
      </Screen>
    );
  return (
    <ChangeoverDesk
      key={station}
      code={station}
      person={person}
      name={name}
      changePerson={changePerson}
      firstScan={firstScan}
      onStation={goTo}
    />
  );
}
