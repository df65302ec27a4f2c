import { type RefObject, useEffect } from 'react';

const EDITABLE =
  'input:not([type=button],[type=checkbox],[type=radio],[type=submit]), textarea, select, [contenteditable=true]';

/**
 * Keeps the keyboard in one input, for a scanner that types wherever the focus is. The focus comes back when it fell
 * on nothing, after a press on anything with finger or mouse, and when the page is seen again. It stays away while
 * another field or a dialog has it, and while someone walks the page with the Tab key; but fast typing there goes to
 * the input all the same, from its first character.
 */
export function useKeptFocus(input: RefObject<HTMLInputElement | null>): void {
  useEffect(() => {
    const takeBack = (): void => {
      if (!isTakenDeliberately(document.activeElement, input.current))
        input.current?.focus({ preventScroll: true });
    };
    // After the browser has moved the focus, and after what was pressed has done its work.
    const soon = (): void => {
      setTimeout(takeBack, 0);
    };
    const onFocusOut = (event: FocusEvent): void => {
      if (event.relatedTarget === null) soon();
    };
    const onKeyDown = (event: KeyboardEvent): void => {
      const isCharacter = event.key.length === 1 && !event.ctrlKey && !event.metaKey && !event.altKey;
      // A space presses the button that has the focus, and no code begins with one.
      if (!isCharacter || event.key === ' ' || event.isComposing) return;
      if (document.activeElement === input.current) return;
      if (isTakenDeliberately(document.activeElement, input.current)) return;
      // The character itself follows into whatever has the focus now.
      input.current?.focus({ preventScroll: true });
    };
    // A page that wakes up leaves the focus where a person has brought it meanwhile.
    if (document.activeElement === null || document.activeElement === document.body) takeBack();
    document.addEventListener('focusout', onFocusOut);
    document.addEventListener('pointerup', soon);
    document.addEventListener('visibilitychange', soon);
    window.addEventListener('focus', soon);
    document.addEventListener('keydown', onKeyDown, { capture: true });
    return () => {
      document.removeEventListener('focusout', onFocusOut);
      document.removeEventListener('pointerup', soon);
      document.removeEventListener('visibilitychange', soon);
      window.removeEventListener('focus', soon);
      document.removeEventListener('keydown', onKeyDown, { capture: true });
    };
  }, [input]);
}

function isTakenDeliberately(active: Element | null, own: HTMLInputElement | null): boolean {
  if (document.querySelector('[role=dialog]') !== null) return true;
  return active !== null && active !== own && active.matches(EDITABLE);
}
