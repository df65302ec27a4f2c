'use client';

import { useRef, useState } from 'react';
import { useTranslations } from 'use-intl';
import type { Changeover } from '@/lib/domain/station/changeover/changeover';
import type { ChangeoverPicture } from '@/lib/domain/station/changeover-picture';
import type { ChangeoverAppProps } from '@/lib/ui/changeover/changeover-app';
import { ChangeoverBoard } from '@/lib/ui/changeover/changeover-board';
import { useChangeover } from '@/lib/ui/changeover/use-changeover';
import { ScanBox } from '@/lib/ui/scan-box';
import { Screen } from '@/lib/ui/shell/screen';
import { PersonBar } from '@/lib/ui/shop/person-bar';
import { RefusedPanel } from '@/lib/ui/shop/refused-panel';
import { SenderStrip } from '@/lib/ui/shop/sender-strip';
import classes from '@/lib/ui/shop/shop.module.css';
import { StationChoice } from '@/lib/ui/shop/station-choice-later';
import { TroublePanel } from '@/lib/ui/shop/trouble-panel';
import { useFirstScan } from '@/lib/ui/shop/use-first-scan';
import { useFocusRescue } from '@/lib/ui/shop/use-focus-rescue';
import { useKeptChoice } from '@/lib/ui/shop/use-kept-choice';
import { useScrollUp } from '@/lib/ui/shop/use-scroll-up';
import { useUnhurriedScan } from '@/lib/ui/shop/use-unhurried-scan';

const CHANGEOVER_KEY = 'reelkin.changeover';

/** The slots of one station, which is chosen first: scan an item, scan its slot. */
export function ChangeoverDesk({
  person,
  name,
  changePerson,
  station: asked,
  firstScan,
}: ChangeoverAppProps) {
  const t = useTranslations();
  const [kept, choose] = useKeptChoice(CHANGEOVER_KEY);
  const [address, setAddress] = useState(asked);
  const station = address ?? kept ?? null;
  const { state, dispatch, picture, trouble, reload } = useChangeover(station);
  const isGone = trouble === 'not_found';
  const isChoosing = (station === null && kept !== undefined) || isGone;
  const choice = useRef<((code: string) => void) | null>(null);
  const goTo = (code: string | null): void => {
    // The address may name a station, and must not name another one than the screen.
    window.history.replaceState(null, '', '/changeover');
    setAddress(null);
    choose(code);
    dispatch({ kind: 'cleared' });
  };
  const scan = useUnhurriedScan(state.stop, (code) => {
    if (isChoosing) choice.current?.(code);
    else dispatch({ kind: 'scanned', code });
  });
  useFirstScan(firstScan, scan);
  useFocusRescue(state.sending === null ? 'open' : 'sending');
  useScrollUp(state.done ?? state.stop ?? state.notice);
  const label = useLabel(state);
  return (
    <Screen
      title={station === null ? t('changeover.title') : <DeskTitle code={station} picture={picture} />}
      beside={
        <PersonBar
          badge={person.badge}
          name={name}
          changePerson={changePerson}
          onChangeStation={station === null ? undefined : () => goTo(null)}
        />
      }
    >
      <div className={classes.shop}>
        <SenderStrip />
        <ScanBox label={isChoosing ? t('station.choose.scan') : label} onScan={scan} />
        <RefusedPanel />
        {isChoosing && (
          <StationChoice unknown={isGone ? station : null} scanTarget={choice} onChoose={goTo} />
        )}
        {!isChoosing && picture === null && <TroublePanel trouble={trouble} onRetry={reload} />}
        {!isChoosing && picture !== null && (
          <ChangeoverBoard
            state={state}
            picture={picture}
            person={person}
            dispatch={dispatch}
            onStation={goTo}
          />
        )}
      </div>
    </Screen>
  );
}

function useLabel({ item, slot }: Changeover): string {
  const t = useTranslations('changeover.scan');
  if (item !== null) return t('slot');
  return slot !== null ? t('item') : t('any');
}

function DeskTitle({ code, picture }: { code: string; picture: ChangeoverPicture | null }) {
  const t = useTranslations();
  const { line = null, operation = '…' } = picture?.station ?? {};
  return (
    <span className={classes.place}>
      <span>{code}</span>
      <small>
        {t('changeover.title')} ·{' '}
        {line === null ? t('station.about', { operation }) : t('station.aboutOnLine', { line, operation })}
      </small>
    </span>
  );
}
