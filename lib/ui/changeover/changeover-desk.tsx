'use client';

import { useTranslations } from 'use-intl';
import type { PersonPrincipal } from '@/lib/domain/people/principal';
import { slotsFitting } from '@/lib/domain/station/changeover/slots-fitting';
import type { ChangeoverPicture } from '@/lib/domain/station/changeover-picture';
import { ChangeoverStatus } from '@/lib/ui/changeover/changeover-status';
import { ReturnedCount } from '@/lib/ui/changeover/returned-count';
import { SlotGrid } from '@/lib/ui/changeover/slot-grid';
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
import { useScrollUp } from '@/lib/ui/shop/use-scroll-up';

/** The slots of one station: scan an item, scan its slot. */
export function ChangeoverDesk({
  code,
  person,
  name,
  changePerson,
  firstScan,
  onStation,
}: {
  code: string;
  person: PersonPrincipal;
  name: string | null;
  changePerson: () => Promise<void>;
  firstScan: string | null;
  onStation: (code: string | null) => void;
}) {
  const t = useTranslations('changeover');
  const { state, dispatch, picture, trouble, reload } = useChangeover(code);
  useFirstScan(firstScan, (first) => dispatch({ kind: 'scanned', code: first }));
  const { item } = state;
  useScrollUp(state.done ?? state.stop ?? state.notice);
  const label = item !== null ? t('scan.slot') : state.slot !== null ? t('scan.item') : t('scan.any');
  return (
    <Screen
      title={<DeskTitle code={code} picture={picture} />}
      beside={
        <PersonBar
          badge={person.badge}
          name={name}
          changePerson={changePerson}
          onChangeStation={() => onStation(null)}
        />
      }
    >
      <div className={classes.shop}>
        <SenderStrip badge={person.badge} />
        {trouble === 'not_found' && <StationChoice unknown={code} onChoose={onStation} />}
        {trouble !== 'not_found' && (
          <ScanBox label={label} onScan={(scanned) => dispatch({ kind: 'scanned', code: scanned })} />
        )}
        <RefusedPanel />
        {picture === null ? (
          trouble !== 'not_found' && <TroublePanel trouble={trouble} onRetry={reload} />
        ) : (
          <>
            <ChangeoverStatus state={state} picture={picture} dispatch={dispatch} onStation={onStation} />
            {state.returned !== null && state.sending === null && (
              <ReturnedCount returned={state.returned} person={person} dispatch={dispatch} />
            )}
            <SlotGrid
              picture={picture}
              chosen={state.slot}
              wanted={item === null ? [] : slotsFitting(picture.slots, item)}
              dispatch={dispatch}
            />
          </>
        )}
      </div>
    </Screen>
  );
}

function DeskTitle({ code, picture }: { code: string; picture: ChangeoverPicture | null }) {
  const t = useTranslations();
  const { line = null, operation = '' } = picture?.station ?? {};
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
