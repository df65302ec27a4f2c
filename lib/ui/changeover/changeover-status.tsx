'use client';

import { IconHandGrab, IconReplace } from '@tabler/icons-react';
import { useTranslations } from 'use-intl';
import type {
  Changeover,
  ChangeoverInput,
  ChangeoverNotice,
} from '@/lib/domain/station/changeover/changeover';
import { placesLeft } from '@/lib/domain/station/changeover/places-left';
import { slotsFitting } from '@/lib/domain/station/changeover/slots-fitting';
import type { ChangeoverPicture } from '@/lib/domain/station/changeover-picture';
import type { ItemPicture } from '@/lib/domain/station/scan-picture';
import { SpliceChoice } from '@/lib/ui/changeover/splice-choice';
import { WrongPart } from '@/lib/ui/changeover/wrong-part';
import { BigButton } from '@/lib/ui/shop/big-button';
import classes from '@/lib/ui/shop/shop.module.css';
import { useLabelWords } from '@/lib/ui/shop/use-label-words';
import { VerdictPanel } from '@/lib/ui/verdict/verdict-panel';

type Props = {
  state: Changeover;
  picture: ChangeoverPicture;
  dispatch: (input: ChangeoverInput) => void;
  onStation: (code: string) => void;
};

/** The one thing to know now: what to scan next, that it is in, or that it must not go in; then what is in the hand. */
export function ChangeoverStatus(props: Props) {
  const { state, dispatch } = props;
  const { item, splice, slot, untaken, sending } = state;
  return (
    <div className={classes.stack}>
      <Verdict {...props} />
      <Untaken codes={untaken} />
      {sending === null && <Hand item={item} dispatch={dispatch} />}
      {sending === null && item?.kind === 'reel' && <SpliceChoice splice={splice} dispatch={dispatch} />}
      {sending === null && item === null && slot !== null && (
        <div className={classes.row}>
          <AnotherSlot dispatch={dispatch} />
        </div>
      )}
    </div>
  );
}

function Verdict(props: Props) {
  const t = useTranslations('changeover');
  const { state, picture } = props;
  const { stop, sending, done, item, slot, notice } = state;
  if (notice !== null) return <Notice {...props} notice={notice} />;
  if (stop !== null)
    return (
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
    );
  if (sending !== null) return <VerdictPanel kind="busy" text={t('sending')} />;
  if (item !== null) return <VerdictPanel kind="scan" text={<InHand item={item} picture={picture} />} />;
  if (slot !== null) return <VerdictPanel kind="scan" text={t('slotChosen', { slot })} />;
  if (done !== null) return <VerdictPanel kind="go" text={<Done done={done} />} />;
  return <VerdictPanel kind="scan" text={picture.slots.length === 0 ? t('noSlots') : t('start')} />;
}

function InHand({ item, picture }: { item: ItemPicture; picture: ChangeoverPicture }) {
  const t = useTranslations('changeover');
  const fitting = slotsFitting(picture.slots, item);
  const leaves = fitting.some(
    (slot) => placesLeft(item, { station: picture.station.code, slot }).length === item.mounted.length,
  );
  return (
    <>
      {t('inHand', { item: item.item, about: aboutOf(item) })}
      <br />
      {fitting.length === 0 ? t('fitsNone') : t('fits', { slots: fitting.slice(0, 8).join(', ') })}
      {item.mounted.map((stand) => (
        <span key={`${stand.station} ${stand.slot}`}>
          <br />
          {t('alsoIn', stand)} {leaves && t('leaves')}
        </span>
      ))}
    </>
  );
}

function Done({ done }: { done: NonNullable<Changeover['done']> }) {
  const t = useTranslations('changeover');
  return (
    <>
      {t(`done.${done.what}`, { item: done.item, slot: done.slot, quantity: String(done.quantity ?? '') })}
      {(done.left ?? []).map((place) => (
        <span key={`${place.station} ${place.slot}`}>
          <br />
          {t('done.left', place)}
        </span>
      ))}
    </>
  );
}

function aboutOf({ part, lot, kind }: ItemPicture): string {
  const about = [part, lot].filter((word) => word !== null).join(', ');
  return about === '' ? kind : about;
}

/** What the next slot would get. */
function Hand({ item, dispatch }: { item: ItemPicture | null; dispatch: Props['dispatch'] }) {
  const t = useTranslations('changeover.hand');
  return (
    <div
      className={classes.strip}
      data-meaning={item === null ? undefined : 'act'}
      data-hand={item?.item ?? ''}
    >
      <IconHandGrab aria-hidden />
      <span className={classes.grow}>
        {item === null ? t('empty') : t.rich('holds', { code: () => <CodeOf item={item} /> })}
      </span>
      {item !== null && <PutDown dispatch={dispatch} />}
    </div>
  );
}

function CodeOf({ item }: { item: ItemPicture }) {
  return (
    <>
      <strong className={classes.code}>{item.item}</strong> · {aboutOf(item)}
    </>
  );
}

function Untaken({ codes }: { codes: readonly string[] }) {
  const t = useTranslations('changeover');
  if (codes.length === 0) return null;
  return (
    <p className={classes.strip} data-meaning="caution" role="alert">
      {t('untaken', { codes: codes.join(', ') })}
    </p>
  );
}

function PutDown({ dispatch }: Pick<Props, 'dispatch'>) {
  const t = useTranslations('changeover');
  return <BigButton onPress={() => dispatch({ kind: 'cleared' })}>{t('clear')}</BigButton>;
}

function AnotherSlot({ dispatch }: Pick<Props, 'dispatch'>) {
  const t = useTranslations('changeover');
  return <BigButton onPress={() => dispatch({ kind: 'cleared' })}>{t('clearSlot')}</BigButton>;
}

function Notice({ picture, onStation, notice }: Props & { notice: ChangeoverNotice }) {
  const t = useTranslations('changeover');
  const wordsOf = useLabelWords();
  const here = picture.station.code;
  const { scanned } = notice;
  const words = (): string => {
    if (notice.code === 'is_label') return wordsOf(notice.label);
    return notice.code === 'other_station'
      ? t('notice.other_station', { scanned, station: notice.station, here })
      : t(`notice.${notice.code}`, { scanned });
  };
  return (
    <div className={classes.strip} data-meaning="caution" role="alert">
      <span className={classes.grow}>{words()}</span>
      {notice.code === 'other_station' && (
        <BigButton shape={IconReplace} onPress={() => onStation(notice.station)}>
          {t('goToStation', { station: notice.station })}
        </BigButton>
      )}
    </div>
  );
}
