'use client';

import { createContext, type ReactNode, useContext, useEffect, useState, useSyncExternalStore } from 'react';
import { FactRecorder, type RecorderView } from '@/lib/offline/fact-recorder';

const RecorderContext = createContext<FactRecorder | null>(null);

const NOTHING: RecorderView = { entries: [], state: 'idle' };

/** Gives the screens below it the recorder of this device, for the person who is signed in. */
export function RecordProvider({ badge, children }: { badge: string; children: ReactNode }) {
  const [recorder, setRecorder] = useState<FactRecorder | null>(null);
  useEffect(() => {
    const opened = new FactRecorder(badge);
    setRecorder(opened);
    return () => opened.close();
  }, [badge]);
  return <RecorderContext value={recorder}>{children}</RecorderContext>;
}

/** The recorder of this device; null on the server and until the page has woken up. */
export function useRecorder(): FactRecorder | null {
  return useContext(RecorderContext);
}

/** What waits in the device's log, and what the sender is about. */
export function useRecorderView(): RecorderView {
  const recorder = useRecorder();
  return useSyncExternalStore(
    recorder?.subscribe ?? subscribeToNothing,
    recorder?.view ?? viewOfNothing,
    viewOfNothing,
  );
}

function subscribeToNothing(): () => void {
  return () => undefined;
}

function viewOfNothing(): RecorderView {
  return NOTHING;
}
