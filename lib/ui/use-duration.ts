import { useTranslations } from 'use-intl';

/** Gives a length of time in milliseconds as a short text in its two largest units: `3 h 20 min`. */
export function useDuration(): (lengthMs: number) => string {
  const t = useTranslations('time');
  return (lengthMs) => {
    const seconds = Math.max(0, Math.floor(lengthMs / 1000));
    const minutes = Math.floor(seconds / 60);
    const hours = Math.floor(minutes / 60);
    if (minutes < 1) return t('seconds', { seconds });
    if (hours < 1) return t('minutes', { minutes });
    if (hours < 48) return t('hours', { hours, minutes: minutes % 60 });
    return t('days', { days: Math.floor(hours / 24), hours: hours % 24 });
  };
}
