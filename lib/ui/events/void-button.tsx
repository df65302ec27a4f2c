import { useTimeZone, useTranslations } from 'use-intl';
import type { RecordedEvent } from '@/lib/domain/events/recorded-event';
import type { DeskAction } from '@/lib/ui/desk/desk-action';
import { DeskButton } from '@/lib/ui/desk/desk-button';
import { eventMessageKey } from '@/lib/ui/events/event-name';
import { formatMoment } from '@/lib/ui/format-moment';

/** Voids one event of a history; a void itself has none. */
export function VoidButton({ recorded, action }: { recorded: RecordedEvent; action: DeskAction | null }) {
  const t = useTranslations('unit.actions.void');
  const tEvent = useTranslations('events');
  const timeZone = useTimeZone() ?? 'UTC';
  const { event } = recorded;
  if (action === null || event.type === 'event.voided') return null;
  const name = tEvent(eventMessageKey(event.type));
  const time = formatMoment(Date.parse(event.at), { timeZone, precision: 'second' });
  return (
    <DeskButton
      isQuiet
      label={t('label')}
      accessibleLabel={t('labelOf', { event: name, time })}
      title={t('title')}
      text={t('text', { event: name, time })}
      confirm={t('confirm')}
      isGrave
      hidden={{ event: event.id }}
      action={action}
    />
  );
}
