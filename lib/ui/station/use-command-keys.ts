import { useEffect } from 'react';
import { COMMAND_KEYS, type ScanCommand } from '@/lib/domain/station/scan-command';

/** Presses a button by its key from wherever the focus is, but for an open dialog. */
export function useCommandKeys(onCommand: (command: ScanCommand) => void): void {
  useEffect(() => {
    const onKeyDown = (event: KeyboardEvent): void => {
      const command = COMMAND_KEYS[event.key];
      if (command === undefined || event.repeat || document.querySelector('[role=dialog]') !== null) return;
      event.preventDefault();
      onCommand(command);
    };
    document.addEventListener('keydown', onKeyDown);
    return () => document.removeEventListener('keydown', onKeyDown);
  }, [onCommand]);
}
