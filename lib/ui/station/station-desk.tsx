'use client';

import { useCallback, useEffect, useRef } from 'react';
import { useTranslations } from 'use-intl';
import type { ScanCommand } from '@/lib/domain/station/scan-command';
import type { Press } from '@/lib/domain/station/session/session-input';
import type { StationPicture } from '@/lib/domain/station/station-picture';
import { ScanBox } from '@/lib/ui/scan-box';
import { Screen } from '@/lib/ui/shell/screen';
import { PersonBar } from '@/lib/ui/shop/person-bar';
import { SenderStrip } from '@/lib/ui/shop/sender-strip';
import classes from '@/lib/ui/shop/shop.module.css';
import { StationChoice } from '@/lib/ui/shop/station-choice-later';
import { UpdateStrip } from '@/lib/ui/shop/update-strip';
import { useFirstScan } from '@/lib/ui/shop/use-first-scan';
import { useFocusRescue } from '@/lib/ui/shop/use-focus-rescue';
import { useKeptChoice } from '@/lib/ui/shop/use-kept-choice';
import type { StationAppProps } from '@/lib/ui/station/station-app';
import { StationBoard } from '@/lib/ui/station/station-board';
import { useCommandKeys } from '@/lib/ui/station/use-command-keys';
import { useScanLabel } from '@/lib/ui/station/use-scan-label';
import { useStation } from '@/lib/ui/station/use-station';

const STATION_KEY = 'reelkin.station';

/**
 * A station at work: who, the scan box, and the one thing to do now. The scan box is the same from before the page has
 * woken up, through the choice of the station, to the last unit: what is typed into it is never cut in two.
 */
export function StationDesk({ person, name, changePerson, firstScan }: StationAppProps) {
  const t = useTranslations('station');
  const [kept, choose] = useKeptChoice(STATION_KEY);
  const station = kept ?? null;
  const { controller, view } = useStation(station, person);
  const { picture, session, trouble } = view;
  const isGone = trouble === 'not_found';
  const isChoosing = kept === null || isGone;
  const choice = useRef<((code: string) => void) | null>(null);
  const early = useRef<string[]>([]);

  const press = useCallback(
    (given: Press) => controller?.dispatch({ kind: 'pressed', press: given }),
    [controller],
  );
  useCommandKeys(useCallback((button: ScanCommand) => press({ button }), [press]));
  const leaveStation = useCallback(() => choose(null), [choose]);
  const reload = useCallback(() => void controller?.reload(), [controller]);
  const scan = useCallback(
    (code: string): void => {
      if (isChoosing) choice.current?.(code);
      else if (controller === null) early.current.push(code);
      else controller.scan(code);
    },
    [isChoosing, controller],
  );
  useEffect(() => {
    if (controller !== null) for (const code of early.current.splice(0)) controller.scan(code);
  }, [controller]);
  useFirstScan(firstScan, scan);
  useFocusRescue(session.task.step);
  const label = useScanLabel(session);
  return (
    <Screen
      title={station === null ? t('title') : <StationName code={station} picture={picture} />}
      beside={
        <PersonBar
          badge={person.badge}
          name={name}
          changePerson={changePerson}
          onChangeStation={station === null ? undefined : leaveStation}
        />
      }
    >
      <div className={classes.shop}>
        <SenderStrip />
        <UpdateStrip isIdle={session.task.step === 'idle'} />
        <ScanBox label={isChoosing ? t('choose.scan') : label} onScan={scan} />
        {isChoosing && (
          <StationChoice unknown={isGone ? station : null} scanTarget={choice} onChoose={choose} />
        )}
        {!isChoosing && controller !== null && (
          <StationBoard view={view} person={person} press={press} reload={reload} />
        )}
      </div>
    </Screen>
  );
}

function StationName({ code, picture }: { code: string; picture: StationPicture | null }) {
  const t = useTranslations('station');
  const { line = null, operation = '…' } = picture?.station ?? {};
  return (
    <span className={classes.place}>
      <span>{code}</span>
      <small>{line === null ? t('about', { operation }) : t('aboutOnLine', { line, operation })}</small>
    </span>
  );
}
