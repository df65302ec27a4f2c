'use client';

import { IconHandStop } from '@tabler/icons-react';
import { useState } from 'react';
import { useTranslations } from 'use-intl';
import type { HoldTargetKind } from '@/lib/domain/events/vocabulary';
import { type OpenHoldEntry, openHoldListSchema } from '@/lib/domain/holds/open-hold-list';
import { may } from '@/lib/domain/people/permissions';
import type { PersonPrincipal } from '@/lib/domain/people/principal';
import { HoldList } from '@/lib/ui/holds/hold-list';
import { PlaceHoldForm } from '@/lib/ui/holds/place-hold-form';
import { ReleaseDialog } from '@/lib/ui/holds/release-dialog';
import { BigButton } from '@/lib/ui/shop/big-button';
import { DeskFrame } from '@/lib/ui/shop/desk-frame';
import classes from '@/lib/ui/shop/shop.module.css';
import { TroublePanel } from '@/lib/ui/shop/trouble-panel';
import { useReading } from '@/lib/ui/shop/use-reading';
import { VerdictPanel } from '@/lib/ui/verdict/verdict-panel';

/** What a hold is to be placed on, as an address may say. */
export type HoldTarget = { kind: HoldTargetKind; id: string };

type Props = {
  person: PersonPrincipal;
  name: string | null;
  changePerson: () => Promise<void>;
  /** A thing that the address asks to be held, or null. */
  target: HoldTarget | null;
};

/** Open holds, with their release and the placing of new ones for those who may. */
export function HoldsApp(props: Props) {
  const t = useTranslations('holds');
  return (
    <DeskFrame {...props} title={t('title')}>
      <Holds {...props} />
    </DeskFrame>
  );
}

function Holds({ person, target }: Props) {
  const t = useTranslations('holds');
  const { data, trouble, reload } = useReading('/api/holds', openHoldListSchema);
  const mayPlace = may(person, 'event:hold.placed');
  const [isPlacing, setPlacing] = useState(target !== null && mayPlace);
  const [released, setReleased] = useState<OpenHoldEntry | null>(null);
  const [done, setDone] = useState<string | null>(null);
  const finish = (words: string): void => {
    setPlacing(false);
    setReleased(null);
    setDone(words);
    reload();
  };
  return (
    <>
      {done !== null && <VerdictPanel kind="go" text={done} />}
      {mayPlace && !isPlacing && (
        <div className={classes.row}>
          <BigButton
            look="act"
            shape={IconHandStop}
            onPress={() => {
              setDone(null);
              setPlacing(true);
            }}
          >
            {t('place')}
          </BigButton>
        </div>
      )}
      {isPlacing && <PlaceHoldForm target={target} onDone={finish} onCancel={() => setPlacing(false)} />}
      {data === null ? (
        <TroublePanel trouble={trouble} onRetry={reload} />
      ) : (
        <HoldList
          list={data}
          onRelease={
            may(person, 'event:hold.released')
              ? (hold) => {
                  setDone(null);
                  setReleased(hold);
                }
              : null
          }
        />
      )}
      {released !== null && (
        <ReleaseDialog hold={released} onDone={finish} onClose={() => setReleased(null)} />
      )}
    </>
  );
}
