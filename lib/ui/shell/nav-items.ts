import { type Action, may } from '@/lib/domain/people/permissions';
import type { Principal } from '@/lib/domain/people/principal';
import type { shell } from '@/lib/ui/messages/en/shell';

/** A screen of the navigation; also the key of its name and of its shape. */
export type NavScreen = keyof typeof shell.screens;

/** How many things wait for somebody, by screen. */
export type NavCounts = Partial<Record<NavScreen, number>>;

const SCREENS: Record<NavScreen, Action> = {
  floor: 'screen:floor',
  station: 'screen:station',
  changeover: 'screen:changeover',
  items: 'screen:items',
  counts: 'screen:counts',
  pack: 'screen:pack',
  holds: 'screen:holds',
  exceptions: 'screen:exceptions',
  devices: 'screen:devices',
  returns: 'screen:returns',
  trace: 'screen:trace',
  plant: 'screen:plant',
  people: 'screen:people',
};

const ORDER: readonly NavScreen[] = [
  'floor',
  'station',
  'changeover',
  'items',
  'counts',
  'pack',
  'holds',
  'exceptions',
  'returns',
  'trace',
  'devices',
  'plant',
  'people',
];

/** The screens that someone may open, in the order of the work: from the line to the answer. */
export function navScreens(principal: Principal): NavScreen[] {
  return ORDER.filter((screen) => may(principal, SCREENS[screen]));
}
