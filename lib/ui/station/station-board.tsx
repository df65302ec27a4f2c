'use client';

import { useTranslations } from 'use-intl';
import type { PersonPrincipal } from '@/lib/domain/people/principal';
import { unitInTask } from '@/lib/domain/station/session/session';
import type { Press } from '@/lib/domain/station/session/session-input';
import classes from '@/lib/ui/shop/shop.module.css';
import { TroublePanel } from '@/lib/ui/shop/trouble-panel';
import { HistoryList } from '@/lib/ui/station/history-list';
import { AsideBanner, GivenStrip } from '@/lib/ui/station/later-panels';
import { SlotList } from '@/lib/ui/station/slot-list';
import type { StationView } from '@/lib/ui/station/station-controller';
import { TaskPanel } from '@/lib/ui/station/task-panel';
import { WaitingList } from '@/lib/ui/station/waiting-list';

/** What stands under the scan box: the one thing to do now, and beside it the slots and the last results. */
export function StationBoard({
  view,
  person,
  press,
  reload,
}: {
  view: StationView;
  person: PersonPrincipal;
  press: (press: Press) => void;
  reload: () => void;
}) {
  const t = useTranslations('station');
  const { picture, session, trouble, badScan } = view;
  return (
    <>
      {trouble !== null && <TroublePanel trouble={trouble} onRetry={reload} />}
      {picture?.isOnRoute && !picture.isQualified && (
        <p className={classes.strip} data-meaning="caution">
          {t('notQualified', { badge: person.badge, operation: picture.station.operation })}
        </p>
      )}
      {badScan !== null && (
        <p className={classes.strip} data-meaning="stop" role="alert">
          {t('scan.notCode', { code: badScan.slice(0, 80) })}
        </p>
      )}
      <div className={classes.columns}>
        <div className={classes.stack}>
          {session.given !== null && <GivenStrip given={session.given} task={session.task} />}
          {session.aside !== null && session.problems.length === 0 && (
            <AsideBanner aside={session.aside} inWork={unitInTask(session.task) ?? ''} press={press} />
          )}
          {picture !== null && (
            <TaskPanel session={session} picture={picture} person={person} press={press} />
          )}
          <WaitingList session={session} press={press} />
        </div>
        {picture !== null && (
          <div className={classes.stack}>
            <SlotList slots={picture.slots} />
            <HistoryList recent={picture.recent} person={person} onUndone={reload} />
          </div>
        )}
      </div>
    </>
  );
}
