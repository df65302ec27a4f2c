'use client';

import { useEffect } from 'react';
import { useTranslations } from 'use-intl';
import type { PersonPrincipal } from '@/lib/domain/people/principal';
import type { Session } from '@/lib/domain/station/session/session';
import type { Press } from '@/lib/domain/station/session/session-input';
import type { StationPicture } from '@/lib/domain/station/station-picture';
import { BigButton } from '@/lib/ui/shop/big-button';
import classes from '@/lib/ui/shop/shop.module.css';
import {
  ConfirmPanel,
  DefectPanel,
  fetchScanPanels,
  PartsPanel,
  PositionPanel,
  ProblemPanel,
  RepairPanel,
  RepeatPanel,
  SignPanel,
  StartPanel,
  StoppedPanel,
  UnansweredPanel,
  WorkPanel,
} from '@/lib/ui/station/later-panels';
import { VerdictPanel } from '@/lib/ui/verdict/verdict-panel';

/** After the first paint, and before anybody has scanned. */
const FETCH_AFTER_MS = 500;

/** What every panel of the station gets. */
export type PanelProps = {
  session: Session;
  picture: StationPicture;
  person: PersonPrincipal;
  press: (press: Press) => void;
};

/** The one thing to do now. A refusal that nobody has read comes before everything else. */
export function TaskPanel(props: PanelProps) {
  const t = useTranslations('station');
  const { session, press } = props;
  useEffect(() => {
    const timer = setTimeout(fetchScanPanels, FETCH_AFTER_MS);
    return () => clearTimeout(timer);
  }, []);
  const { task } = session;
  const [problem] = session.problems;
  if (problem !== undefined)
    return <ProblemPanel problem={problem} onRead={() => press({ button: 'acknowledge' })} />;
  switch (task.step) {
    case 'idle':
      return <VerdictPanel kind="scan" text={t('idle')} />;
    case 'asking':
      return (
        <div className={classes.stack}>
          <VerdictPanel kind="busy" text={t('asking', { unit: task.unit })} />
          <div className={classes.row}>
            <BigButton look="quiet" onPress={() => press({ button: 'leave' })}>
              {t('leave')}
            </BigButton>
          </div>
        </div>
      );
    case 'unanswered':
      return <UnansweredPanel task={task} press={press} />;
    case 'stopped':
      return <StoppedPanel {...props} task={task} />;
    case 'new':
      return <StartPanel {...props} task={task} />;
    case 'repeat':
      return <RepeatPanel {...props} work={task.work} />;
    case 'working':
      return <WorkPanel {...props} task={task} />;
    case 'parts':
      return <PartsPanel {...props} work={task.work} />;
    case 'defect':
      return <DefectPanel {...props} work={task.work} />;
    case 'position':
      return <PositionPanel {...props} task={task} />;
    case 'confirming':
      return <ConfirmPanel {...props} work={task.work} />;
    case 'signing':
      return <SignPanel {...props} task={task} />;
    case 'repairing':
      return <RepairPanel {...props} task={task} />;
    default:
      return task satisfies never;
  }
}
