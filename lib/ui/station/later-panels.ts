import dynamic from 'next/dynamic';

// What a station does not show at once comes when it is first needed, so that its first load stays small.

const asideBanner = () => import('@/lib/ui/station/aside-banner');
const workPanel = () => import('@/lib/ui/station/work-panel');
const givenStrip = () => import('@/lib/ui/station/given-strip');
const unansweredPanel = () => import('@/lib/ui/station/unanswered-panel');

/** See `given-strip.tsx`. */
export const GivenStrip = dynamic(() => givenStrip().then((module) => module.GivenStrip));
/** See `unanswered-panel.tsx`. */
export const UnansweredPanel = dynamic(() => unansweredPanel().then((module) => module.UnansweredPanel));
/** See `work-panel.tsx`. */
export const WorkPanel = dynamic(() => workPanel().then((module) => module.WorkPanel));

/** See `aside-banner.tsx`. */
export const AsideBanner = dynamic(() => asideBanner().then((module) => module.AsideBanner));
/** See `repeat-panel.tsx`. */
export const RepeatPanel = dynamic(() =>
  import('@/lib/ui/station/repeat-panel').then((module) => module.RepeatPanel),
);

/** Brings what the first scans must show at once, whatever comes of them; to be called when the station stands there. */
export function fetchScanPanels(): void {
  for (const fetch of [workPanel, unansweredPanel, givenStrip, asideBanner])
    void fetch().catch(() => undefined);
}

/** See `confirm-panel.tsx`. */
export const ConfirmPanel = dynamic(() =>
  import('@/lib/ui/station/confirm-panel').then((module) => module.ConfirmPanel),
);
/** See `defect-panel.tsx`. */
export const DefectPanel = dynamic(() =>
  import('@/lib/ui/station/defect-panel').then((module) => module.DefectPanel),
);
/** See `position-panel.tsx`. */
export const PositionPanel = dynamic(() =>
  import('@/lib/ui/station/position-panel').then((module) => module.PositionPanel),
);
/** See `parts-panel.tsx`. */
export const PartsPanel = dynamic(() =>
  import('@/lib/ui/station/parts-panel').then((module) => module.PartsPanel),
);
/** See `problem-panel.tsx`; only an answer of the server brings it. */
export const ProblemPanel = dynamic(() =>
  import('@/lib/ui/station/problem-panel').then((module) => module.ProblemPanel),
);
/** See `stopped-panel.tsx`; only an answer brings it. */
export const StoppedPanel = dynamic(() =>
  import('@/lib/ui/station/stopped-panel').then((module) => module.StoppedPanel),
);
/** See `repair-panel.tsx`. */
export const RepairPanel = dynamic(() =>
  import('@/lib/ui/station/repair-panel').then((module) => module.RepairPanel),
);
/** See `sign-panel.tsx`. */
export const SignPanel = dynamic(() =>
  import('@/lib/ui/station/sign-panel').then((module) => module.SignPanel),
);
/** See `start-panel.tsx`. */
export const StartPanel = dynamic(() =>
  import('@/lib/ui/station/start-panel').then((module) => module.StartPanel),
);
/** See `undo-dialog.tsx`. */
export const UndoDialog = dynamic(() =>
  import('@/lib/ui/station/undo-dialog').then((module) => module.UndoDialog),
);
