import { useEffect, useRef } from 'react';
import { advancePackDesk } from '@/lib/domain/packing/desk/advance-pack-desk';
import {
  NEW_PACK_DESK,
  type PackDesk,
  type PackEffect,
  type PackInput,
} from '@/lib/domain/packing/desk/pack-desk';
import { type PackPicture, packPictureSchema } from '@/lib/domain/packing/pack-picture';
import { apiPath } from '@/lib/offline/read-api';
import { identifyCode } from '@/lib/ui/shop/identify-code';
import { giveSignal } from '@/lib/ui/shop/signals';
import { useStepMachine } from '@/lib/ui/shop/step-machine';
import { useFactSender } from '@/lib/ui/shop/use-fact-sender';
import { type Reading, useReading } from '@/lib/ui/shop/use-reading';

const CONTAINER_KEY = 'reelkin.container';

/** The packing screen's state, and the open container as the server knows it; a reload finds it open again. */
export function usePackDesk(asked: string | null): {
  state: PackDesk;
  dispatch: (input: PackInput) => void;
  picture: PackPicture | null;
  trouble: Reading<unknown>['trouble'];
  reload: () => void;
} {
  const send = useFactSender();
  const run = (effect: PackEffect): void => {
    switch (effect.kind) {
      case 'identify':
        void identifyCode(effect.code).then((scan) =>
          dispatch({ kind: 'identified', code: effect.code, scan }),
        );
        return;
      case 'record':
        void send(effect.draft).then((reasons) => {
          dispatch({ kind: 'settled', reasons });
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
  const { state, dispatch } = useStepMachine<PackDesk, PackInput, PackEffect>({
    initial: { ...NEW_PACK_DESK, container: asked },
    advance: advancePackDesk,
    run,
  });
  const { container } = state;
  const path = container === null ? null : apiPath('/api/pack', { container });
  const { data: picture, trouble, reload } = useReading(path, packPictureSchema);
  useKeptContainer(container, dispatch);
  return { state, dispatch, picture, trouble, reload };
}

/** Opens the container that was open when the page was left, and keeps the one that is open now. */
function useKeptContainer(container: string | null, dispatch: (input: PackInput) => void): void {
  const isOpened = useRef(false);
  useEffect(() => {
    if (isOpened.current && container === null) localStorage.removeItem(CONTAINER_KEY);
    if (container !== null) localStorage.setItem(CONTAINER_KEY, container);
    if (isOpened.current) return;
    isOpened.current = true;
    const kept = localStorage.getItem(CONTAINER_KEY);
    if (container === null && kept !== null) dispatch({ kind: 'opened', container: kept });
  }, [container, dispatch]);
}
