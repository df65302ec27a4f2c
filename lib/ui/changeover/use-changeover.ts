import { useEffect, useRef } from 'react';
import { advanceChangeover } from '@/lib/domain/station/changeover/advance-changeover';
import {
  type Changeover,
  type ChangeoverEffect,
  type ChangeoverInput,
  NEW_CHANGEOVER,
} from '@/lib/domain/station/changeover/changeover';
import { type ChangeoverPicture, changeoverPictureSchema } from '@/lib/domain/station/changeover-picture';
import { stationListSchema } from '@/lib/domain/station/station-picture';
import { apiPath } from '@/lib/offline/read-api';
import { identifyCode } from '@/lib/ui/shop/identify-code';
import { giveSignal } from '@/lib/ui/shop/signals';
import { useStepMachine } from '@/lib/ui/shop/step-machine';
import { useFactSender } from '@/lib/ui/shop/use-fact-sender';
import { type Reading, useReading } from '@/lib/ui/shop/use-reading';

const READ_EVERY_MS = 20_000;

/** The changeover of one station (none while it is null): its slots as they stand, and the state of the scans. */
export function useChangeover(station: string | null): {
  state: Changeover;
  dispatch: (input: ChangeoverInput) => void;
  picture: ChangeoverPicture | null;
  trouble: Reading<unknown>['trouble'];
  reload: () => void;
} {
  const {
    data: picture,
    trouble,
    reload,
  } = useReading(station === null ? null : apiPath('/api/changeover', { station }), changeoverPictureSchema);
  const { data: list } = useReading('/api/stations', stationListSchema);
  const send = useFactSender();
  const stations = (list?.stations ?? []).map((entry) => entry.code);
  const run = (effect: ChangeoverEffect): void => {
    switch (effect.kind) {
      case 'identify':
        void identifyCode(effect.code).then((scan) =>
          dispatch({ kind: 'identified', code: effect.code, scan }),
        );
        return;
      case 'record':
        void Promise.all(effect.drafts.map(send)).then((answers) => {
          dispatch({ kind: 'settled', reasons: answers.at(-1) ?? null });
          reload();
        });
        return;
      case 'signal':
        giveSignal(effect.signal);
        return;
      default:
        effect satisfies never;
    }
  };
  const { state, dispatch } = useStepMachine<Changeover, ChangeoverInput, ChangeoverEffect>({
    initial: NEW_CHANGEOVER,
    advance: (before, input) =>
      advanceChangeover(before, input, { station: station ?? '', slots: picture?.slots ?? [], stations }),
    run,
  });
  const isLoaded = picture !== null && list !== null;
  const deliver = useEarlyInputs(isLoaded, dispatch);
  useEffect(() => {
    const timer = setInterval(() => {
      if (document.visibilityState === 'visible') reload();
    }, READ_EVERY_MS);
    return () => clearInterval(timer);
  }, [reload]);
  return { state, dispatch: deliver, picture, trouble, reload };
}

/** Keeps what is scanned before the slots are known, since only then a label can be told from an item. */
function useEarlyInputs(
  isLoaded: boolean,
  dispatch: (input: ChangeoverInput) => void,
): (input: ChangeoverInput) => void {
  const early = useRef<ChangeoverInput[]>([]);
  useEffect(() => {
    if (isLoaded) for (const input of early.current.splice(0)) dispatch(input);
  }, [isLoaded, dispatch]);
  return (input) => {
    if (isLoaded) dispatch(input);
    else early.current.push(input);
  };
}
