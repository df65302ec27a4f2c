import { useEffect, useState, useSyncExternalStore } from 'react';
import type { PersonPrincipal } from '@/lib/domain/people/principal';
import type { FactRecorder } from '@/lib/offline/fact-recorder';
import { StationController, type StationView } from '@/lib/ui/station/station-controller';

const READ_EVERY_MS = 20_000;

/** The controller of a station with what it shows; it reads the station again now and then while the page is seen. */
export function useStation(options: { station: string; person: PersonPrincipal; recorder: FactRecorder }): {
  controller: StationController;
  view: StationView;
} {
  const [controller] = useState(() => new StationController(options));
  const view = useSyncExternalStore(controller.subscribe, controller.view, controller.view);
  useEffect(() => {
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
