'use client';

import { useTranslations } from 'use-intl';
import type { PersonPrincipal } from '@/lib/domain/people/principal';
import { RecordProvider, useRecorder } from '@/lib/ui/record/record-provider';
import { Screen } from '@/lib/ui/shell/screen';
import classes from '@/lib/ui/shop/shop.module.css';
import { StationChoice } from '@/lib/ui/shop/station-choice-later';
import { useKeptChoice } from '@/lib/ui/shop/use-kept-choice';
import { StationDesk } from '@/lib/ui/station/station-desk';

/** Key under which a device keeps where it stands. */
export const STATION_KEY = 'reelkin.station';

type Props = {
  person: PersonPrincipal;
  /** The person's name in the plant, or null. */
  name: string | null;
  changePerson: () => Promise<void>;
  /** A code that was scanned before the page had woken up, or null. */
  firstScan: string | null;
};

/** The station of this tablet: chosen once, then the desk where units are scanned. */
export function StationApp({ person, name, changePerson, firstScan }: Props) {
  return (
    <RecordProvider badge={person.badge}>
      <ChosenStation person={person} name={name} changePerson={changePerson} firstScan={firstScan} />
    </RecordProvider>
  );
}

function ChosenStation({ person, name, changePerson, firstScan }: Props) {
  const t = useTranslations();
  const [station, choose] = useKeptChoice(STATION_KEY);
  const recorder = useRecorder();
  if (station === undefined || recorder === null)
    return (
      <Screen title={t('station.title')}>
        <p className={classes.quiet}>{t('record.loading')}</p>
      </Screen>
    );
  if (station === null)
    return (
      <Screen title={t('station.title')}>
        <div className={classes.shop}>
          <StationChoice onChoose={choose} />
        </div>
      </Screen>
    );
  return (
    <StationDesk
      key={`${station} ${person.badge}`}
      code={station}
      person={person}
      name={name}
      recorder={recorder}
      changePerson={changePerson}
      firstScan={firstScan}
      onChangeStation={() => choose(null)}
    />
  );
}
