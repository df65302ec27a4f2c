import { type MouseEvent, type PointerEvent, useRef, useState } from 'react';
import type { TimeSpan } from '@/lib/ui/slot-timeline/timeline-address';

/** A time in a slot that someone points out. */
export type PickedTime = TimeSpan & { slot: string };

/** A pointer that moves less far than this presses, it does not drag. */
const PRESS_PX = 6;

/** Dragging over a slot's track picks a time in it; a press stays one, and a drag over a bar does not follow its link. */
export function useTimeDrag(span: TimeSpan, onPicked: (picked: PickedTime) => void) {
  const [drag, setDrag] = useState<PickedTime | null>(null);
  const begin = useRef<{ x: number; slot: string; left: number; width: number } | null>(null);
  const hasMoved = useRef(false);

  const pickedAt = (x: number): PickedTime | null => {
    const start = begin.current;
    if (start === null || Math.abs(x - start.x) < PRESS_PX) return null;
    const timeAt = (px: number) => {
      const share = Math.min(1, Math.max(0, (px - start.left) / start.width));
      return Math.round(span.fromMs + share * (span.toMs - span.fromMs));
    };
    return { slot: start.slot, fromMs: timeAt(Math.min(x, start.x)), toMs: timeAt(Math.max(x, start.x)) };
  };

  const handlersOf = (slot: string) => ({
    onPointerDown(event: PointerEvent<HTMLElement>) {
      if (event.button !== 0) return;
      const { left, width } = event.currentTarget.getBoundingClientRect();
      begin.current = { x: event.clientX, slot, left, width };
      hasMoved.current = false;
    },
    onPointerMove(event: PointerEvent<HTMLElement>) {
      const picked = pickedAt(event.clientX);
      if (picked === null) return;
      hasMoved.current = true;
      event.currentTarget.setPointerCapture(event.pointerId);
      setDrag(picked);
    },
    onPointerUp(event: PointerEvent<HTMLElement>) {
      const picked = pickedAt(event.clientX);
      begin.current = null;
      setDrag(null);
      if (picked !== null) onPicked(picked);
    },
    onPointerCancel() {
      begin.current = null;
      setDrag(null);
    },
    onClickCapture(event: MouseEvent<HTMLElement>) {
      if (hasMoved.current) event.preventDefault();
      hasMoved.current = false;
    },
  });
  return { drag, handlersOf };
}
