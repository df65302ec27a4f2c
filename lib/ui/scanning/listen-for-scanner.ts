import type { RefObject } from 'react';
import { bareCode } from '@/lib/domain/scanning/bare-code';
import { readScannerSettings } from '@/lib/domain/scanning/scanner-settings';
import { advanceWedge, endByPause, interruptedBurst, NO_BURST } from '@/lib/domain/scanning/wedge';
import { SCANNER_KEY } from '@/lib/ui/scanning/scanner-key';
import { type FieldBefore, fieldNow, setField } from '@/lib/ui/scanning/typed-field';
import { giveSignal } from '@/lib/ui/shop/signals';

/** Takes what a scanner typed; `into` puts the code into the field that was meant, or is undefined for the page. */
export type OnWedge = (payload: string, into: ((code: string) => void) | undefined) => void;

/**
 * Listens for a scanner that types, whatever has the focus. What it typed into a field is taken out again, but for a
 * field that takes scans; what a person types stays. While a dialog is open a scan goes nowhere and is heard. Returns what ends it.
 */
export function listenForScanner(box: RefObject<HTMLInputElement | null>, onScan: OnWedge): () => void {
  const settings = readScannerSettings(localStorage.getItem(SCANNER_KEY));
  // What is being typed now began before anybody listened.
  let burst = interruptedBurst(performance.now());
  let before: FieldBefore | null = null;
  let pause: ReturnType<typeof setTimeout> | undefined;

  const deliver = (payload: string): void => {
    const own = box.current;
    if (before !== null) setField(before.field, before.value);
    // A key that was typed elsewhere may have brought the focus into the box.
    if (own !== null && before?.field !== own) setField(own, '');
    if (document.querySelector('[role=dialog]') === null) onScan(payload, undefined);
    else giveSignal('attention');
  };
  /** Whether the field keeps what was typed, and the key that ends it does what it does there. */
  const isLeftInField = (payload: string): boolean => {
    // The beginning of the code came before this page listened: only the box has all of it.
    if (before?.field === box.current && before?.value !== '') return true;
    if (!before?.takesScan) return false;
    const { field } = before;
    if (bareCode(payload) === null) onScan(payload, (code) => setField(field, code));
    return true;
  };
  const lookForPause = (): void => {
    const payload = endByPause(burst, performance.now(), settings);
    if (payload === null) return;
    burst = NO_BURST;
    if (!isLeftInField(payload)) deliver(payload);
  };
  const onKey = (event: KeyboardEvent): void => {
    if (event.isComposing) return;
    const step = advanceWedge(
      burst,
      {
        kind: event.type === 'keyup' ? 'up' : 'down',
        key: event.key,
        ctrl: event.ctrlKey,
        alt: event.altKey,
        meta: event.metaKey,
        isRepeat: event.repeat,
        atMs: event.timeStamp,
      },
      settings,
    );
    burst = step.burst;
    if (step.begins) before = fieldNow();
    const isLeft = step.scan !== null && isLeftInField(step.scan);
    if (step.isTaken && !isLeft) {
      event.preventDefault();
      event.stopImmediatePropagation();
    }
    if (step.scan !== null && !isLeft) deliver(step.scan);
    if (settings.suffix !== 'pause') return;
    clearTimeout(pause);
    pause = setTimeout(lookForPause, settings.gapMs + 10);
  };
  document.addEventListener('keydown', onKey, { capture: true });
  document.addEventListener('keyup', onKey, { capture: true });
  return () => {
    clearTimeout(pause);
    document.removeEventListener('keydown', onKey, { capture: true });
    document.removeEventListener('keyup', onKey, { capture: true });
  };
}
