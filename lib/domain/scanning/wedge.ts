import type { ScannerSettings } from '@/lib/domain/scanning/scanner-settings';

/** A key that went down, or `Alt` that came up; `atMs` is when the device saw it. */
export type WedgeKey = {
  kind: 'down' | 'up';
  key: string;
  ctrl: boolean;
  alt: boolean;
  meta: boolean;
  isRepeat: boolean;
  atMs: number;
};

/** What was typed so far without a pause. */
export type Burst = {
  text: string;
  lastMs: number;
  /** Whether a pause, or the end of a scan, came before it: what follows a person's typing is no scan. */
  isAlone: boolean;
  /** Digits typed while Alt is down: a character by its number. */
  altDigits: string;
};

/** What becomes of a key. */
export type WedgeStep = {
  burst: Burst;
  /** The key began a new burst. */
  begins: boolean;
  /** The key belongs to the scan and must do nothing else. */
  isTaken: boolean;
  /** The character is the third or a later one of what will be a scan if it ends as one: nobody need see it typed. */
  isLikely: boolean;
  /** The scan that the key ended, or null. */
  scan: string | null;
};

/** Nothing typed yet. */
export const NO_BURST: Burst = {
  text: '',
  lastMs: Number.NEGATIVE_INFINITY,
  isAlone: true,
  altDigits: '',
};

/** Shortest scan that is told from typing by its speed; shorter ones go where the focus is. */
const SCAN_LENGTH_MIN = 3;
/** A scan stands alone: so long nothing was typed before it. */
const ALONE_MS = 250;

const MODIFIERS = new Set(['Shift', 'Control', 'Alt', 'AltGraph', 'CapsLock', 'Meta']);
// Function keys that some scanners send for the control characters FS, GS, RS, US (from memory).
const FUNCTION_KEYS: Readonly<Record<string, string>> = {
  F7: '\u001c',
  F8: '\u001d',
  F9: '\u001e',
  F10: '\u001f',
};
// Ctrl with these keys is a control character as well where the keyboard needs no Shift for it.
const UNSHIFTED: Readonly<Record<string, string>> = { '6': '\u001e', '-': '\u001f' };

/**
 * Tells a scanner that types from a person, by speed alone: a burst without a pause longer than the settings' gap,
 * that stands alone and ends with the suffix. Control characters are kept, however the scanner sends them: as
 * Ctrl+], as Alt+029, as F8. Pure, so that it can be tried with any history of keys.
 */
export function advanceWedge(before: Burst, key: WedgeKey, settings: ScannerSettings): WedgeStep {
  const isFast = key.atMs - before.lastMs <= settings.gapMs && !key.isRepeat;
  const isRunning = isFast && (before.text !== '' || before.altDigits !== '');
  const stays = { burst: before, begins: false, isTaken: false, isLikely: false, scan: null };
  if (key.kind === 'up') return key.key === 'Alt' ? endAltCode(before, key, isRunning) : stays;
  if (MODIFIERS.has(key.key)) return isRunning ? { ...stays, burst: { ...before, lastMs: key.atMs } } : stays;

  if (isRunning && key.key === settings.suffix)
    return isScan(before)
      ? {
          burst: afterScan(key.atMs),
          begins: false,
          isTaken: true,
          isLikely: false,
          scan: withoutPrefix(before.text, settings),
        }
      : { ...stays, burst: interruptedBurst(key.atMs) };

  const begun = isRunning ? before : begin(before, key);
  if (key.alt && !key.ctrl && /^[0-9]$/.test(key.key)) {
    const burst = { ...begun, altDigits: begun.altDigits + key.key, lastMs: key.atMs };
    return { ...stays, burst, begins: !isRunning, isTaken: isRunning };
  }
  const character = characterOf(key, isRunning);
  if (character === null) return { ...stays, burst: interruptedBurst(key.atMs) };
  const burst = { ...begun, text: begun.text + character.text, lastMs: key.atMs };
  return {
    burst,
    begins: !isRunning,
    isTaken: isRunning && character.isControl,
    isLikely: !character.isControl && isScan(burst),
    scan: null,
  };
}

/** The scan that a pause has ended, for scanners that type nothing behind a code; null when none has. */
export function endByPause(burst: Burst, nowMs: number, settings: ScannerSettings): string | null {
  const isOver = settings.suffix === 'pause' && nowMs - burst.lastMs > settings.gapMs;
  return isOver && isScan(burst) ? withoutPrefix(burst.text, settings) : null;
}

function isScan({ text, isAlone, altDigits }: Burst): boolean {
  return isAlone && altDigits === '' && text.length >= SCAN_LENGTH_MIN;
}

function begin({ lastMs, text, isAlone }: Burst, key: WedgeKey): Burst {
  const isEnd = text === '' && isAlone;
  const isStart = !key.isRepeat && (isEnd || key.atMs - lastMs > ALONE_MS);
  return { text: '', lastMs: key.atMs, isAlone: isStart, altDigits: '' };
}

/** After the end of a scan the next one may follow at once. */
function afterScan(lastMs: number): Burst {
  return { ...NO_BURST, lastMs };
}

/** Something was typed that is no scan: the next one has to stand alone. */
export function interruptedBurst(lastMs: number): Burst {
  return { ...NO_BURST, lastMs, isAlone: false };
}

function endAltCode(before: Burst, key: WedgeKey, isRunning: boolean): WedgeStep {
  const { altDigits } = before;
  const burst = { ...before, altDigits: '', lastMs: isRunning ? key.atMs : before.lastMs };
  const nothing = { begins: false, isTaken: false, isLikely: false, scan: null };
  if (altDigits === '' || !isRunning) return { ...nothing, burst };
  const text = before.text + String.fromCharCode(Number(altDigits) % 0x10000);
  return { ...nothing, burst: { ...burst, text }, isTaken: true };
}

function characterOf(key: WedgeKey, isRunning: boolean): { text: string; isControl: boolean } | null {
  const isOne = [...key.key].length === 1;
  // Ctrl and Alt together are AltGr, which types characters such as brackets.
  if (isOne && !key.meta && key.ctrl === key.alt) return { text: key.key, isControl: false };
  if (isOne && key.ctrl && !key.meta) return controlOf(key.key);
  const byFunctionKey = isRunning ? FUNCTION_KEYS[key.key] : undefined;
  return byFunctionKey === undefined ? null : { text: byFunctionKey, isControl: true };
}

function controlOf(key: string): { text: string; isControl: true } | null {
  const unshifted = UNSHIFTED[key];
  if (unshifted !== undefined) return { text: unshifted, isControl: true };
  const code = key.toUpperCase().charCodeAt(0);
  if (code < 0x20) return { text: key, isControl: true };
  return code >= 0x40 && code <= 0x5f ? { text: String.fromCharCode(code - 0x40), isControl: true } : null;
}

function withoutPrefix(text: string, { prefix }: ScannerSettings): string {
  return prefix !== '' && text.startsWith(prefix) ? text.slice(prefix.length) : text;
}
