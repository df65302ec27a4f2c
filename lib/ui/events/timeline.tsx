'use client';

import { IconAlertTriangleFilled, IconBan, IconHandStop } from '@tabler/icons-react';
import type { ReactNode } from 'react';
import { useTimeZone, useTranslations } from 'use-intl';
import type { RecordedEvent } from '@/lib/domain/events/recorded-event';
import { CodeText } from '@/lib/ui/code-text';
import { EventFacts } from '@/lib/ui/events/event-facts';
import { eventMessageKey } from '@/lib/ui/events/event-name';
import classes from '@/lib/ui/events/timeline.module.css';
import { formatMoment } from '@/lib/ui/format-moment';
import { useDuration } from '@/lib/ui/use-duration';
import { ReasonList } from '@/lib/ui/verdict/reason-list';
import { useHoldReason } from '@/lib/ui/verdict/use-hold-reason';

/** From how late on it is worth saying that an event was recorded later than it happened. */
const LATE_MS = 120_000;
// Every clock has some doubt; nobody decides anything by less than this.
const DOUBT_SAID_MS = 1000;

/**
 * What happened, in order: voided events keep their place, struck through with who and why; events against a rule say
 * which; those that came late say when. `actionOf` puts a button at the end of an event, `belowOf` more under it.
 */
export function Timeline({
  history,
  holds = [],
  actionOf,
  belowOf,
}: {
  history: readonly RecordedEvent[];
  /** Holds on the thing: one that the gate placed is told at the event that caused it. */
  holds?: readonly { hold: string; reason: string; automatic: boolean }[];
  actionOf?: (recorded: RecordedEvent) => ReactNode;
  belowOf?: (recorded: RecordedEvent) => ReactNode;
}) {
  return (
    <ol className={classes.timeline}>
      {history.map((recorded) => (
        <Entry
          key={recorded.event.id}
          recorded={recorded}
          held={holds.find(({ hold, automatic }) => automatic && hold === recorded.event.id)?.reason ?? null}
          action={actionOf?.(recorded)}
          below={belowOf?.(recorded)}
        />
      ))}
    </ol>
  );
}

function Entry({
  recorded,
  held,
  action,
  below,
}: {
  recorded: RecordedEvent;
  /** Why the gate put the thing on hold for it, or null. */
  held: string | null;
  action: ReactNode;
  below: ReactNode;
}) {
  const reasonOf = useHoldReason();
  const t = useTranslations('eventFacts');
  const tEvent = useTranslations('events');
  const timeZone = useTimeZone() ?? 'UTC';
  const timeOf = (instant: string) => formatMoment(Date.parse(instant), { timeZone, precision: 'second' });
  const { event, voidedBy, flags } = recorded;
  return (
    <li
      className={classes.entry}
      data-voided={voidedBy !== null}
      data-flagged={flags.length > 0}
      data-type={event.type}
    >
      <time dateTime={event.at}>{timeOf(event.at)}</time>
      <div>
        <p className={classes.line}>
          <strong>{tEvent(eventMessageKey(event.type))}</strong>{' '}
          {event.station !== undefined && (
            <span>{t.rich('stationShort', { code: () => <CodeText code={event.station ?? ''} /> })} </span>
          )}
          {event.operator !== undefined && <span>{t('byShort', { badge: event.operator })} </span>}
          <EventFacts event={event} />
        </p>
        <Asides recorded={recorded} />
        {flags.length > 0 && (
          <div className={classes.flags}>
            <IconAlertTriangleFilled aria-hidden />
            <div>
              <b>{t('flagged')}</b>
              <ReasonList reasons={flags} />
            </div>
          </div>
        )}
        {held !== null && voidedBy === null && (
          <p className={classes.void}>
            <IconHandStop aria-hidden />
            {t('heldByGate', { reason: reasonOf(held) })}
          </p>
        )}
        {voidedBy !== null && (
          <p className={classes.void}>
            <IconBan aria-hidden />
            {t('voided', { by: voidedBy.by, time: timeOf(voidedBy.at), reason: voidedBy.reason })}
          </p>
        )}
        {below}
      </div>
      <div className="rk-no-print">{voidedBy === null && action}</div>
    </li>
  );
}

/** Doubt about the time, and how and by whom the event came when that is not what the line above says. */
function Asides({ recorded: { event, recordedAt, recordedBy } }: { recorded: RecordedEvent }) {
  const t = useTranslations('eventFacts');
  const duration = useDuration();
  const timeZone = useTimeZone() ?? 'UTC';
  const time = formatMoment(Date.parse(recordedAt), { timeZone, precision: 'second' });
  const delayMs = Date.parse(recordedAt) - Date.parse(event.at);
  const asides = [
    (event.uncertaintyMs ?? 0) >= DOUBT_SAID_MS && t('doubt', { doubt: duration(event.uncertaintyMs ?? 0) }),
    delayMs > LATE_MS && t('recordedLater', { delay: duration(delayMs), time }),
    delayMs < -LATE_MS && t('recordedBefore', { time }),
    recordedBy !== event.operator && t('brought', { by: recordedBy }),
  ].filter((aside) => aside !== false);
  return asides.length === 0 ? null : <p className={classes.asides}>{asides.join(' · ')}</p>;
}
