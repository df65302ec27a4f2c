import type { OperatorWords } from '@/lib/ui/messages/operator-words';

/** See the English words of the same name. */
export const time: OperatorWords['time'] = {
  seconds: '{seconds, number} s',
  minutes: '{minutes, number} min',
  hours: '{hours, number} h {minutes, number} min',
  days: '{days, number} d {hours, number} h',
};
