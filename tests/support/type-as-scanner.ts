import type { CDPSession, Page } from 'playwright';

const KEY_GAP_MS = 5;
const CTRL = 2;
const ENDS = {
  Enter: { key: 'Enter', code: 'Enter', windowsVirtualKeyCode: 13, text: '\r' },
  Tab: { key: 'Tab', code: 'Tab', windowsVirtualKeyCode: 9 },
};

/**
 * Types as a scanner does, wherever the focus is: all keys at once, each stamped 5 ms after the one before, so that a
 * busy machine does not make a slow hand of them. Control characters come with Ctrl, as GS by Ctrl and `]`.
 */
export async function typeAsScanner(
  page: Page,
  code: string,
  end: keyof typeof ENDS = 'Enter',
): Promise<void> {
  const session = await page.context().newCDPSession(page);
  const firstMs = Date.now();
  const keys = [...[...code].map(keyOf), ENDS[end]];
  await Promise.all(keys.map((key, index) => press(session, key, firstMs + index * KEY_GAP_MS)));
  await session.detach();
}

type Key = { key: string; text?: string; code?: string; windowsVirtualKeyCode?: number; modifiers?: number };

function keyOf(character: string): Key {
  const number = character.charCodeAt(0);
  return number < 0x20
    ? { key: String.fromCharCode(number + 0x40).toLowerCase(), modifiers: CTRL }
    : { key: character, text: character };
}

async function press(session: CDPSession, key: Key, atMs: number): Promise<void> {
  const timestamp = atMs / 1000;
  const type = key.text === undefined ? 'rawKeyDown' : 'keyDown';
  const { text, ...released } = key;
  await Promise.all([
    session.send('Input.dispatchKeyEvent', { ...key, type, timestamp }),
    session.send('Input.dispatchKeyEvent', { ...released, type: 'keyUp', timestamp }),
  ]);
}
