import { setTimeout as sleep } from 'node:timers/promises';
import type { CDPSession, Page } from 'playwright';

const KEY_GAP_MS = 5;
const CTRL = 2;
const ENDS = {
  Enter: { key: 'Enter', code: 'Enter', windowsVirtualKeyCode: 13, text: '\r' },
  Tab: { key: 'Tab', code: 'Tab', windowsVirtualKeyCode: 9 },
};

type Key = { key: string; text?: string; code?: string; windowsVirtualKeyCode?: number; modifiers?: number };

/**
 * Types as a scanner does, wherever the focus is: each key is stamped 5 ms after the one before, however late a busy
 * machine brings it, so that it is not taken for a hand. Control characters come with Ctrl: GS is Ctrl and `]`. With null
 * nothing ends the code.
 */
export async function typeAsScanner(
  page: Page,
  code: string,
  end: keyof typeof ENDS | null = 'Enter',
): Promise<void> {
  const session = await page.context().newCDPSession(page);
  const firstMs = Date.now();
  const keys = [...[...code].map(keyOf), ...(end === null ? [] : [ENDS[end]])];
  for (const [index, key] of keys.entries()) {
    await press(session, key, firstMs + index * KEY_GAP_MS);
    await sleep(KEY_GAP_MS);
  }
  await session.detach();
}

function keyOf(character: string): Key {
  const number = character.charCodeAt(0);
  return number < 0x20
    ? { key: String.fromCharCode(number + 0x40).toLowerCase(), modifiers: CTRL }
    : { key: character, text: character };
}

async function press(session: CDPSession, key: Key, atMs: number): Promise<void> {
  const { text, ...released } = key;
  const timestamp = atMs / 1000;
  const type = text === undefined ? 'rawKeyDown' : 'keyDown';
  await Promise.all([
    session.send('Input.dispatchKeyEvent', { ...key, type, timestamp }),
    session.send('Input.dispatchKeyEvent', { ...released, type: 'keyUp', timestamp }),
  ]);
}
