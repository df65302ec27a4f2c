'use client';

import { createContext, type ReactNode, useContext, useEffect, useMemo, useSyncExternalStore } from 'react';
import { FactRecorder, type RecorderView } from '@/lib/offline/fact-recorder';

const RecorderContext = createContext<FactRecorder | null>(null);

const NOTHING: RecorderView = { entries: [], state: 'idle' };

/** Gives the screens below it the recorder of this device, for the person who is signed in. */
export function RecordProvider({ badge, children }: { badge: string; children: ReactNode }) {
  const recorder = useMemo(() => new FactRecorder(badge), [badge]);
  useEffect(() => {
    void recorder.start();
    return () => recorder.stop();
  }, [recorder]);
  return <RecorderContext value={recorder}>{children}</RecorderContext>;
}

/** The recorder of this device. */
export function useRecorder(): FactRecorder {
  const recorder = useContext(RecorderContext);
  if (recorder === null) throw new Error('There is no RecordProvider around this.');
  return recorder;
}

/** What waits in the device's log, and what the sender is about. */
export function useRecorderView(): RecorderView {
  const recorder = useRecorder();
  return useSyncExternalStore(recorder.subscribe, recorder.view, () => NOTHING);
}
