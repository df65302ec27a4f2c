'use client';

import { useCallback, useEffect } from 'react';
import { useTranslations } from 'use-intl';
import type { PersonPrincipal } from '@/lib/domain/people/principal';
import type { ScanCommand } from '@/lib/domain/station/scan-command';
import type { Press } from '@/lib/domain/station/session/session-input';
import type { StationPicture } from '@/lib/domain/station/station-picture';
import type { FactRecorder } from '@/lib/offline/fact-recorder';
import { ScanBox } from '@/lib/ui/scan-box';
import { Screen } from '@/lib/ui/shell/screen';
import { PersonBar } from '@/lib/ui/shop/person-bar';
import { SenderStrip } from '@/lib/ui/shop/sender-strip';
import classes from '@/lib/ui/shop/shop.module.css';
import { StationChoice } from '@/lib/ui/shop/station-choice-later';
import { TroublePanel } from '@/lib/ui/shop/trouble-panel';
import { useFirstScan } from '@/lib/ui/shop/use-first-scan';
import { GivenStrip } from '@/lib/ui/station/given-strip';
import { HistoryList } from '@/lib/ui/station/history-list';
import { SlotList } from '@/lib/ui/station/slot-list';
import { TaskPanel } from '@/lib/ui/station/task-panel';
import { useCommandKeys } from '@/lib/ui/station/use-command-keys';
import { useScanLabel } from '@/lib/ui/station/use-scan-label';
import { useStation } from '@/lib/ui/station/use-station';
import { WaitingList } from '@/lib/ui/station/waiting-list';

/** A station at work: who, the scan box, the one thing to do now, and beside it the slots and the last results. */
export function StationDesk({
  code,
  person,
  name,
  recorder,
  changePerson,
  firstScan,
  onChangeStation,
}: {
  code: string;
  person: PersonPrincipal;
  name: string | null;
  recorder: FactRecorder;
  changePerson: () => Promise<void>;
  firstScan: string | null;
  onChangeStation: () => void;
}) {
  const { controller, view } = useStation({ station: code, person, recorder });
  const { picture, session, trouble, badScan } = view;
  const press = useCallback(
    (given: Press) => controller.dispatch({ kind: 'pressed', press: given }),
    [controller],
  );
  const command = useCallback((button: ScanCommand) => press({ button }), [press]);
  useCommandKeys(command);
  useFirstScan(firstScan, (first) => controller.scan(first));
  useFocusAfter(session.task.step);
  const scanLabel = useScanLabel(session);
  const t = useTranslations('station');

  if (trouble === 'not_found')
    return (
      <Screen title={t('title')}>
        <div className={classes.shop}>
          <StationChoice unknown={code} onChoose={onChangeStation} />
        </div>
      </Screen>
    );
  return (
    <Screen
      title={<StationName code={code} picture={picture} />}
      beside={
        <PersonBar
          badge={person.badge}
          name={name}
          changePerson={changePerson}
          onChangeStation={onChangeStation}
        />
      }
    >
      <div className={classes.shop}>
        <SenderStrip badge={person.badge} />
        {trouble !== null && <TroublePanel trouble={trouble} onRetry={() => void controller.reload()} />}
        <ScanBox label={scanLabel} onScan={(scanned) => controller.scan(scanned)} />
        {badScan !== null && (
          <p className={classes.strip} data-meaning="stop" role="alert">
            {t('scan.notCode', { code: badScan.slice(0, 80) })}
          </p>
        )}
        <div className={classes.columns}>
          <div className={classes.stack}>
            <GivenStrip given={session.given} task={session.task} />
            {picture !== null && (
              <TaskPanel session={session} picture={picture} person={person} press={press} />
            )}
            <WaitingList session={session} press={press} />
          </div>
          {picture !== null && (
            <div className={classes.stack}>
              <SlotList slots={picture.slots} />
              <HistoryList
                recent={picture.recent}
                person={person}
                onUndone={() => void controller.reload()}
              />
            </div>
          )}
        </div>
      </div>
    </Screen>
  );
}

function StationName({ code, picture }: { code: string; picture: StationPicture | null }) {
  const t = useTranslations('station');
  if (picture === null) return code;
  const { line, operation } = picture.station;
  return (
    <span className={classes.place}>
      <span>{code}</span>
      <small>{line === null ? t('about', { operation }) : t('aboutOnLine', { line, operation })}</small>
    </span>
  );
}

/** Gives the keyboard back to the scan box when the button that had it went away with its question. */
function useFocusAfter(step: string): void {
  // biome-ignore lint/correctness/useExhaustiveDependencies: it runs after every change of the step
  useEffect(() => {
    if (document.activeElement !== null && document.activeElement !== document.body) return;
    document.querySelector<HTMLInputElement>('input[name="code"]')?.focus({ preventScroll: true });
  }, [step]);
}
