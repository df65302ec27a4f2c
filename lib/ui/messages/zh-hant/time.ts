import type { Translation } from '@/lib/ui/messages/translation';

/** See the English words of the same name. */
export const time: Translation['time'] = {
  seconds: '{seconds, number} 秒',
  minutes: '{minutes, number} 分',
  hours: '{hours, number} 時 {minutes, number} 分',
  days: '{days, number} 天 {hours, number} 時',
};
