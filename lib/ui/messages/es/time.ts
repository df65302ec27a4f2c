import type { Translation } from '@/lib/ui/messages/translation';

/** See the English words of the same name. */
export const time: Translation['time'] = {
  seconds: '{seconds, number} s',
  minutes: '{minutes, number} min',
  hours: '{hours, number} h {minutes, number} min',
  days: '{days, number} d {hours, number} h',
};
