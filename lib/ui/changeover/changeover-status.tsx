'use client';

import { IconReplace } from '@tabler/icons-react';
import { useTranslations } from 'use-intl';
import type { Changeover, ChangeoverInput } from '@/lib/domain/station/changeover/changeover';
import { slotsFitting } from '@/lib/domain/station/changeover/slots-fitting';
import type { ChangeoverPicture } from '@/lib/domain/station/changeover-picture';
import { WrongPart } from '@/lib/ui/changeover/wrong-part';
import { BigButton } from '@/lib/ui/shop/big-button';
import classes from '@/lib/ui/shop/shop.module.css';
import { VerdictPanel } from '@/lib/ui/verdict/verdict-panel';

type Props = {
  state: Changeover;
  picture: ChangeoverPicture;
  dispatch: (input: ChangeoverInput) => void;
  onStation: (code: string) => void;
};

/** The one thing to know now: what to scan next, that it is in, or that it must not go in. */
export function ChangeoverStatus(props: Props) {
  const t = useTranslations('changeover');
  const { state, picture, dispatch } = props;
  const { stop, sending, done, item, slot, notice } = state;
  if (notice !== null) return <Notice {...props} notice={notice} />;
  if (stop !== null)
    return (
      <div className={classes.stack}>
        <VerdictPanel
          kind="stop"
          text={
            stop.slot === null
              ? t('stoppedItem', { item: stop.item })
              : t('stopped', { item: stop.item, slot: stop.slot })
          }
          reasons={stop.reasons.filter((reason) => reason.code !== 'wrong_part')}
        >
          <WrongPart reasons={stop.reasons} />
        </VerdictPanel>
        {item !== null && <PutDown dispatch={dispatch} />}
      </div>
    );
  if (sending !== null) return <VerdictPanel kind="busy" text={t('sending')} />;
  if (item !== null) {
    const fitting = slotsFitting(picture.slots, item);
    const about = [item.part, item.lot].filter((word) => word !== null).join(', ');
    return (
      <div className={classes.stack}>
        <VerdictPanel
          kind="scan"
          text={
            <>
              {t('inHand', { item: item.item, about: about === '' ? item.kind : about })}
              <br />
              {fitting.length === 0 ? t('fitsNone') : t('fits', { slots: fitting.slice(0, 8).join(', ') })}
              {item.mounted.map((stand) => (
                <span key={`${stand.station} ${stand.slot}`}>
                  <br />
                  {t('alsoIn', stand)}
                </span>
              ))}
            </>
          }
        />
        <PutDown dispatch={dispatch} />
      </div>
    );
  }
  if (slot !== null) return <ChosenSlot dispatch={dispatch} slot={slot} />;
  if (done !== null)
    return <VerdictPanel kind="go" text={t(`done.${done.what}`, { item: done.item, slot: done.slot })} />;
  return <VerdictPanel kind="scan" text={picture.slots.length === 0 ? t('noSlots') : t('start')} />;
}

function PutDown({ dispatch }: Pick<Props, 'dispatch'>) {
  const t = useTranslations('changeover');
  return (
    <div className={classes.row}>
      <BigButton onPress={() => dispatch({ kind: 'cleared' })}>{t('clear')}</BigButton>
    </div>
  );
}

function ChosenSlot({ dispatch, slot }: Pick<Props, 'dispatch'> & { slot: string }) {
  const t = useTranslations('changeover');
  return (
    <div className={classes.stack}>
      <VerdictPanel kind="scan" text={t('slotChosen', { slot })} />
      <div className={classes.row}>
        <BigButton onPress={() => dispatch({ kind: 'cleared' })}>{t('clearSlot')}</BigButton>
      </div>
    </div>
  );
}

function Notice({ picture, onStation, notice }: Props & { notice: NonNullable<Changeover['notice']> }) {
  const t = useTranslations('changeover');
  const here = picture.station.code;
  return (
    <div className={classes.strip} data-meaning="caution" role="alert">
      <span className={classes.grow}>
        {notice.code === 'other_station'
          ? t('notice.other_station', { scanned: notice.scanned, station: notice.station, here })
          : t(`notice.${notice.code}`, { scanned: notice.scanned })}
      </span>
      {notice.code === 'other_station' && (
        <BigButton shape={IconReplace} onPress={() => onStation(notice.station)}>
          {t('goToStation', { station: notice.station })}
        </BigButton>
      )}
    </div>
  );
}
