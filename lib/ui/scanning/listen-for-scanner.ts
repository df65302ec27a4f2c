import type { RefObject } from 'react';
import { bareCode } from '@/lib/domain/scanning/bare-code';
import { withoutControls } from '@/lib/domain/scanning/control-characters';
import { readScannerSettings } from '@/lib/domain/scanning/scanner-settings';
import { advanceWedge, endByPause, interruptedBurst, NO_BURST } from '@/lib/domain/scanning/wedge';
import { SCANNER_KEY } from '@/lib/ui/scanning/scanner-key';
import { type FieldBefore, fieldNow, setField } from '@/lib/ui/scanning/typed-field';
import { giveSignal } from '@/lib/ui/shop/signals';

/** The verdict is drawn first, the empty box after it. */
const EMPTY_AFTER_MS = 150;

/** Takes what a scanner typed; `into` puts the code into the field that was meant, or is undefined for the page. */
export type OnWedge = (payload: string, into: ((code: string) => void) | undefined) => void;

/**
 * Listens for a scanner that types, whatever has the focus. What it typed into a field is taken out again, but for a
 * field that takes scans; what a person types stays. The box does not show a scan beyond its second character. While a
 * dialog is open a scan goes nowhere and is heard. Returns what ends it.
 */
export function listenForScanner(box: RefObject<HTMLInputElement | null>, onScan: OnWedge): () => void {
  const settings = readScannerSettings(localStorage.getItem(SCANNER_KEY));
  // What is being typed now began before anybody listened.
  let burst = interruptedBurst(performance.now());
  let before: FieldBefore | null = null;
  let pause: ReturnType<typeof setTimeout> | undefined;
  // How much of the burst the box shows, while it does not show the rest: to draw each key costs a slow tablet more
  // than the verdict. Null while it shows all of it.
  let shownLength: number | null = null;
  let emptying: ReturnType<typeof setTimeout> | undefined;
  let leftInBox = '';

  /** What was typed became no scan: the box has all of it, as if nobody had listened. */
  const showRest = (text: string): void => {
    const own = box.current;
    const rest = shownLength === null ? '' : withoutControls(text.slice(shownLength));
    shownLength = null;
    if (own !== null && rest !== '') setField(own, own.value + rest);
  };
  /** Whether the box began empty and has just what was typed. */
  const isInBox = (text: string): boolean =>
    box.current !== null &&
    document.activeElement === box.current &&
    box.current.value === text &&
    !(before?.field === box.current && before.value !== '');

  /** Leaves nothing of a scan in the box, however it came there: a key that was typed elsewhere may bring the focus. */
  const emptyBox = (): void => {
    if (emptying === undefined) return;
    clearTimeout(emptying);
    emptying = undefined;
    // What somebody has put in meanwhile, as by pasting, is none of the scan.
    if (box.current?.value === leftInBox) setField(box.current, '');
  };
  const deliver = (payload: string): void => {
    shownLength = null;
    if (before !== null && before.field !== box.current) setField(before.field, before.value);
    leftInBox = box.current?.value ?? '';
    emptying = setTimeout(emptyBox, EMPTY_AFTER_MS);
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
    if (payload === null) {
      showRest(burst.text);
      return;
    }
    burst = NO_BURST;
    if (!isLeftInField(payload)) deliver(payload);
  };
  const onKey = (event: KeyboardEvent): void => {
    if (event.isComposing) return;
    if (event.type === 'keydown') emptyBox();
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
    const typed = burst.text;
    burst = step.burst;
    const isOver = step.begins || (burst.text === '' && step.scan === null);
    if (isOver) showRest(typed);
    if (step.begins) before = fieldNow();
    if (step.isLikely && shownLength === null && isInBox(typed)) shownLength = typed.length;
    const isUnseen = step.isLikely && shownLength !== null;
    const isLeft = step.scan !== null && isLeftInField(step.scan);
    if (isUnseen || (step.isTaken && !isLeft)) {
      event.preventDefault();
      event.stopImmediatePropagation();
    }
    if (step.scan !== null && !isLeft) deliver(step.scan);
    if (settings.suffix !== 'pause' && shownLength === null) return;
    clearTimeout(pause);
    pause = setTimeout(lookForPause, settings.gapMs + 10);
  };
  document.addEventListener('keydown', onKey, { capture: true });
  document.addEventListener('keyup', onKey, { capture: true });
  return () => {
    clearTimeout(pause);
    emptyBox();
    showRest(burst.text);
    document.removeEventListener('keydown', onKey, { capture: true });
    document.removeEventListener('keyup', onKey, { capture: true });
  };
}
