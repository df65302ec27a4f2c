'use client';

import { createContext, type ReactNode, useContext, useEffect, useMemo, useSyncExternalStore } from 'react';
import type { PersonPrincipal } from '@/lib/domain/people/principal';
import { fetchEventSchema } from '@/lib/offline/event-schema';
import { FactRecorder, type RecorderView } from '@/lib/offline/fact-recorder';
import { keepPresent } from '@/lib/offline/present-person';
import { startWorker } from '@/lib/offline/worker-updates';
import { AFTER_FIRST_LOAD_MS } from '@/lib/ui/first-load';

const RecorderContext = createContext<FactRecorder | null>(null);

/** The screen comes first. */
const KEEP_AFTER_MS = 500;

const NOTHING: RecorderView = { entries: [], state: 'idle' };

type Props = {
  person: PersonPrincipal;
  name: string | null;
  /** False where the device alone has let this person in. */
  isFromServer?: boolean;
  children: ReactNode;
};

/**
 * Gives the screens below it the recorder of this device, for the person who is signed in, and sees to it that they
 * can go on without the server.
 */
export function RecordProvider({ person, name, isFromServer = true, children }: Props) {
  const { badge, role } = person;
  const recorder = useMemo(() => new FactRecorder(badge), [badge]);
  useEffect(() => {
    void recorder.start();
    return () => recorder.stop();
  }, [recorder]);
  useEffect(() => {
    const timer = setTimeout(() => void fetchEventSchema().catch(() => undefined), AFTER_FIRST_LOAD_MS);
    return () => clearTimeout(timer);
  }, []);
  useEffect(() => {
    startWorker();
    if (!isFromServer) return;
    const present = { kind: 'person', badge, role } as const;
    keepPresent({ person: present, name, isChecked: true });
    const timer = setTimeout(() => {
      // Without a place to keep it, this device only cannot let the person in by itself.
      void import('@/lib/offline/kept-people')
        .then((people) => people.keepPerson(present, name))
        .catch(() => undefined);
    }, KEEP_AFTER_MS);
    return () => clearTimeout(timer);
  }, [badge, role, name, isFromServer]);
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
