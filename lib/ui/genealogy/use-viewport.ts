import { select } from 'd3-selection';
import { type D3ZoomEvent, type ZoomBehavior, type ZoomTransform, zoom, zoomIdentity } from 'd3-zoom';
import { type RefObject, startTransition, useCallback, useEffect, useMemo, useRef, useState } from 'react';
import type { Box } from '@/lib/ui/genealogy/lay-out';

/** Smallest and largest scale; below `FAR` words cannot be read and are left out. */
const SCALE: [number, number] = [0.08, 2];
const FAR = 0.33;
/** A picture that fits at this scale is shown whole at first; a larger one no smaller than `OPEN_MIN`. */
const FIT_MIN = 0.6;
const OPEN_MIN = 0.75;
const ROOM = 24;

/** What has to be drawn: a box around what can be seen, which moves on before its edge comes into view. */
type View = { drawn: Box; isFar: boolean };
const NOTHING: View = { drawn: { x0: 0, y0: 0, x1: 0, y1: 0 }, isFar: false };

type Move = (behaviour: ZoomBehavior<HTMLDivElement, unknown>, frame: HTMLDivElement) => void;

/** The ways to move over a picture, and what of it has to be drawn. */
export type Viewport = View & {
  frame: RefObject<HTMLDivElement | null>;
  layer: RefObject<HTMLDivElement | null>;
  zoomBy(factor: number): void;
  fit(box: Box): void;
  /** The picture at first: whole where it can be read so, else with the unit in the middle of its height. */
  open(box: Box): void;
  reveal(box: Box): void;
  shift(x: number, y: number): void;
};

/**
 * Pan and zoom of a layer inside a frame, by drag, fingers, and wheel with Ctrl. The layer is moved without React: only
 * what has to be drawn is state, and it changes once in half a screen.
 */
export function useViewport(): Viewport {
  const frame = useRef<HTMLDivElement>(null);
  const layer = useRef<HTMLDivElement>(null);
  const behaviour = useRef<ZoomBehavior<HTMLDivElement, unknown> | null>(null);
  const transform = useRef<ZoomTransform>(zoomIdentity);
  const [view, setView] = useState(NOTHING);

  useEffect(() => {
    const element = frame.current;
    if (element === null) return;
    let seen = NOTHING;
    // What comes into view is drawn beside the movement, not in its way: there is half a screen of it beforehand.
    const look = () => {
      const next = viewAt(seen, transform.current, [element.clientWidth, element.clientHeight]);
      if (next === seen) return;
      seen = next;
      startTransition(() => setView(next));
    };
    const zooming = zoom<HTMLDivElement, unknown>()
      .scaleExtent(SCALE)
      .filter((event: Event) =>
        event instanceof WheelEvent
          ? event.ctrlKey || event.metaKey
          : !(event instanceof MouseEvent && event.button !== 0),
      )
      .on('zoom', (event: D3ZoomEvent<HTMLDivElement, unknown>) => {
        transform.current = event.transform;
        const { x, y, k } = event.transform;
        if (layer.current !== null) layer.current.style.transform = `translate(${x}px, ${y}px) scale(${k})`;
        look();
      });
    behaviour.current = zooming;
    const selection = select(element).call(zooming).on('dblclick.zoom', null);
    const observer = new ResizeObserver(look);
    observer.observe(element);
    return () => {
      observer.disconnect();
      selection.on('.zoom', null);
    };
  }, []);

  const move = useCallback((how: Move) => {
    if (behaviour.current !== null && frame.current !== null) how(behaviour.current, frame.current);
  }, []);

  const moves = useMemo(
    () => ({
      zoomBy: (factor: number) => move((zooming, element) => zooming.scaleBy(select(element), factor)),
      fit: (box: Box) => move((zooming, element) => show(zooming, element, box)),
      open: (box: Box) =>
        move((zooming, element) => {
          if (scaleToFit(element, box) >= FIT_MIN) show(zooming, element, box);
          else {
            const [width, height] = [element.clientWidth, element.clientHeight];
            const across = width / (box.x1 - box.x0 + 2 * ROOM);
            const scale = Math.max(OPEN_MIN, Math.min(1, across));
            const x = across >= OPEN_MIN ? width / 2 - (scale * (box.x0 + box.x1)) / 2 : width / 2;
            zooming.transform(select(element), zoomIdentity.translate(x, height / 2).scale(scale));
          }
        }),
      reveal: (box: Box) =>
        move((zooming, element) => {
          const [x0, y0] = transform.current.apply([box.x0, box.y0]);
          const [x1, y1] = transform.current.apply([box.x1, box.y1]);
          const isSeen = x0 >= 0 && y0 >= 0 && x1 <= element.clientWidth && y1 <= element.clientHeight;
          if (!isSeen) zooming.translateTo(select(element), (box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2);
        }),
      shift: (x: number, y: number) => move((zooming, element) => zooming.translateBy(select(element), x, y)),
    }),
    [move],
  );
  return { ...view, ...moves, frame, layer };
}

function scaleToFit(element: HTMLDivElement, box: Box): number {
  const [width, height] = [box.x1 - box.x0 + 2 * ROOM, box.y1 - box.y0 + 2 * ROOM];
  return Math.max(SCALE[0], Math.min(1, element.clientWidth / width, element.clientHeight / height));
}

function show(zooming: ZoomBehavior<HTMLDivElement, unknown>, element: HTMLDivElement, box: Box): void {
  const scale = scaleToFit(element, box);
  const x = element.clientWidth / 2 - (scale * (box.x0 + box.x1)) / 2;
  const y = element.clientHeight / 2 - (scale * (box.y0 + box.y1)) / 2;
  zooming.transform(select(element), zoomIdentity.translate(x, y).scale(scale));
}

/** The view before, while it still covers what is seen and is not much too large; else a new one, half a screen wider. */
function viewAt(before: View, transform: ZoomTransform, [width, height]: [number, number]): View {
  const [x0, y0] = transform.invert([0, 0]);
  const [x1, y1] = transform.invert([width, height]);
  const { drawn } = before;
  const isCovered = drawn.x0 <= x0 && drawn.y0 <= y0 && drawn.x1 >= x1 && drawn.y1 >= y1;
  const isTooLarge = drawn.x1 - drawn.x0 > 4 * (x1 - x0);
  const isFar = transform.k < FAR;
  if (isCovered && !isTooLarge && isFar === before.isFar) return before;
  const [roomX, roomY] = [(x1 - x0) / 2, (y1 - y0) / 2];
  return { drawn: { x0: x0 - roomX, y0: y0 - roomY, x1: x1 + roomX, y1: y1 + roomY }, isFar };
}
