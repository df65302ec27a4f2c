import { type RefObject, useEffect, useRef, useState } from 'react';
import { openCodeDetector } from '@/lib/ui/scanning/code-detector';
import { drawView } from '@/lib/ui/scanning/draw-view';

/** Why the camera shows nothing; the words say what to do. */
export type CameraTrouble = 'insecure' | 'forbidden' | 'missing' | 'busy';

// Often enough to feel instant, seldom enough to leave a tablet its breath.
const LOOK_EVERY_MS = 90;

/**
 * Shows the camera at the back in a video element and reports every code that it sees, again and again. It rests while
 * the page is not seen, and lets go of the camera when it is not needed any more.
 */
export function useCamera(
  video: RefObject<HTMLVideoElement | null>,
  onCode: (payload: string) => void,
): { trouble: CameraTrouble | null; torch: boolean | null; setTorch: (isOn: boolean) => void } {
  const [trouble, setTrouble] = useState<CameraTrouble | null>(null);
  const [torch, setTorchState] = useState<boolean | null>(null);
  const track = useRef<MediaStreamTrack | null>(null);
  const newest = useRef(onCode);
  newest.current = onCode;

  useEffect(() => {
    let isOver = false;
    let timer: ReturnType<typeof setTimeout> | undefined;
    let stream: MediaStream | null = null;

    const watch = async (): Promise<void> => {
      const detect = await openCodeDetector();
      const canvas = document.createElement('canvas');
      let turn = 0;
      const look = async (): Promise<void> => {
        const element = video.current;
        if (isOver || element === null) return;
        if (document.visibilityState === 'visible' && drawView(canvas, element, turn))
          for (const payload of await detect(canvas).catch(() => [])) newest.current(payload);
        turn += 1;
        if (!isOver) timer = setTimeout(look, LOOK_EVERY_MS);
      };
      await look();
    };
    const open = async (): Promise<void> => {
      if (navigator.mediaDevices === undefined) {
        setTrouble('insecure');
        return;
      }
      const wish = { facingMode: { ideal: 'environment' }, width: { ideal: 1280 }, height: { ideal: 720 } };
      stream = await navigator.mediaDevices.getUserMedia({ video: wish, audio: false });
      const element = video.current;
      if (isOver || element === null) {
        letGo(stream);
        return;
      }
      element.srcObject = stream;
      await element.play();
      track.current = stream.getVideoTracks()[0] ?? null;
      setTorchState(hasTorch(track.current) ? false : null);
      await watch();
    };
    open().catch((error: unknown) => {
      if (!isOver) setTrouble(troubleOf(error));
    });
    return () => {
      isOver = true;
      clearTimeout(timer);
      if (stream !== null) letGo(stream);
    };
  }, [video]);

  const setTorch = (isOn: boolean): void => {
    const wish: MediaTrackConstraintSet & { torch: boolean } = { torch: isOn };
    void track.current?.applyConstraints({ advanced: [wish] }).then(
      () => setTorchState(isOn),
      () => setTorchState(null),
    );
  };
  return { trouble, torch, setTorch };
}

function hasTorch(track: MediaStreamTrack | null): boolean {
  const capabilities: object = track?.getCapabilities?.() ?? {};
  return 'torch' in capabilities && capabilities.torch === true;
}

function letGo(stream: MediaStream): void {
  for (const each of stream.getTracks()) each.stop();
}

function troubleOf(error: unknown): CameraTrouble {
  const name = error instanceof Error ? error.name : '';
  if (name === 'NotAllowedError' || name === 'SecurityError') return 'forbidden';
  return name === 'NotFoundError' || name === 'OverconstrainedError' ? 'missing' : 'busy';
}
