import { useTranslations } from 'use-intl';
import type { EventType } from '@/lib/domain/events/catalogue';
import { type EventMessageKey, events } from '@/lib/ui/messages/en/events';

/** Gives the short name of an event type. */
export function useEventName(): (type: EventType) => string {
  const t = useTranslations('events');
  return (type) => {
    const key = type.replace('.', '_');
    return isKey(key) ? t(key) : type;
  };
}

function isKey(key: string): key is EventMessageKey {
  return key in events;
}
