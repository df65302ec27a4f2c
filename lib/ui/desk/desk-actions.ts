import type { DeskAction } from '@/lib/ui/desk/desk-action';

/** What the person who looks at a record may decide about it; null for what their role does not let them. */
export type DeskActions = {
  placeHold: DeskAction | null;
  releaseHold: DeskAction | null;
  voidEvent: DeskAction | null;
  scrapUnit: DeskAction | null;
};

/** For records of the past, about which nothing is decided any more. */
export const NO_ACTIONS: DeskActions = {
  placeHold: null,
  releaseHold: null,
  voidEvent: null,
  scrapUnit: null,
};
