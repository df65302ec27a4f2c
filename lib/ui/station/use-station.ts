import { useEffect, useMemo, useSyncExternalStore } from 'react';
import type { PersonPrincipal } from '@/lib/domain/people/principal';
import { useRecorder } from '@/lib/ui/record/record-provider';
import { NO_STATION, StationController, type StationView } from '@/lib/ui/station/station-controller';

const READ_EVERY_MS = 20_000;

/**
 * The controller of a station with what it shows, or null while no station is chosen; it reads the station again now
 * and then while the page is seen.
 */
export function useStation(
  station: string | null,
  person: PersonPrincipal,
): { controller: StationController | null; view: StationView } {
  const recorder = useRecorder();
  const { badge, role } = person;
  const controller = useMemo(
    () =>
      station === null
        ? null
        : new StationController({ station, person: { kind: 'person', badge, role }, recorder }),
    [station, badge, role, recorder],
  );
  const view = useSyncExternalStore(
    controller?.subscribe ?? subscribeToNothing,
    controller?.view ?? viewOfNothing,
    viewOfNothing,
  );
  useEffect(() => {
    if (controller === null) return;
    void controller.start();
    const timer = setInterval(() => {
      if (document.visibilityState === 'visible') void controller.reload();
    }, READ_EVERY_MS);
    return () => {
      clearInterval(timer);
      controller.stop();
    };
  }, [controller]);
  return { controller, view };
}

function subscribeToNothing(): () => void {
  return () => undefined;
}

function viewOfNothing(): StationView {
  return NO_STATION;
}
