import dynamic from 'next/dynamic';

// What most stations never show comes when it is first needed, so that a station's first load stays small.

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
