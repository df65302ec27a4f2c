import { useEffect } from 'react';
import { COMMAND_KEYS, type ScanCommand } from '@/lib/domain/station/scan-command';

/** Some scanners send F8 for the separator that a GS1 code begins with: it is a button only if nothing follows. */
const MAYBE_SEPARATOR = 'F8';
const FOLLOWS_WITHIN_MS = 60;

/** Presses a button by its key from wherever the focus is, but for an open dialog. */
export function useCommandKeys(onCommand: (command: ScanCommand) => void): void {
  useEffect(() => {
    let maybe: ReturnType<typeof setTimeout> | undefined;
    const onKeyDown = (event: KeyboardEvent): void => {
      if (event.key.length === 1) clearTimeout(maybe);
      const command = COMMAND_KEYS[event.key];
      if (command === undefined || event.repeat || document.querySelector('[role=dialog]') !== null) return;
      event.preventDefault();
      if (event.key !== MAYBE_SEPARATOR) onCommand(command);
      else maybe = setTimeout(() => onCommand(command), FOLLOWS_WITHIN_MS);
    };
    document.addEventListener('keydown', onKeyDown);
    return () => {
      clearTimeout(maybe);
      document.removeEventListener('keydown', onKeyDown);
    };
  }, [onCommand]);
}
