import { useLayoutEffect, useMemo, useRef } from 'react';
import type { GraphActions } from '@/lib/ui/genealogy/graph-canvas';

/** Everything that can be done with the picture and its nodes. */
export type PictureActions = GraphActions & {
  zoom(factor: number): void;
  fit(): void;
  fold(): void;
  unfold(): void;
};

/**
 * Actions that stay the same from one drawing to the next and do what the newest ones do: whoever gets them need not be
 * drawn again. They are for events, not to be called while drawing.
 */
export function useSteadyActions(actions: PictureActions): PictureActions {
  const newest = useRef(actions);
  useLayoutEffect(() => {
    newest.current = actions;
  });
  return useMemo(
    () => ({
      pick: (id) => newest.current.pick(id),
      open: (id) => newest.current.open(id),
      toggle: (id) => newest.current.toggle(id),
      onKey: (event) => newest.current.onKey(event),
      zoom: (factor) => newest.current.zoom(factor),
      fit: () => newest.current.fit(),
      fold: () => newest.current.fold(),
      unfold: () => newest.current.unfold(),
    }),
    [],
  );
}
