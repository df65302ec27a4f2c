'use client';

import { IconCheck, IconSignature, IconTool, IconX } from '@tabler/icons-react';
import { useTranslations } from 'use-intl';
import { may } from '@/lib/domain/people/permissions';
import { aboutNow, innerToJoin } from '@/lib/domain/station/session/inner-to-join';
import type { Work } from '@/lib/domain/station/session/session';
import { BigButton } from '@/lib/ui/shop/big-button';
import classes from '@/lib/ui/shop/shop.module.css';
import { UnitCautions } from '@/lib/ui/shop/unit-cautions';
import { InnerUnits } from '@/lib/ui/station/inner-units';
import { NoticeText } from '@/lib/ui/station/notice-text';
import type { TaskAt } from '@/lib/ui/station/panel-task';
import { PartList } from '@/lib/ui/station/part-list';
import { ProvisionalStrip } from '@/lib/ui/station/provisional-strip';
import { ReadingsCard } from '@/lib/ui/station/readings-card-later';
import type { PanelProps } from '@/lib/ui/station/task-panel';
import { VerdictPanel } from '@/lib/ui/verdict/verdict-panel';

/** Go: work on it, then pass or fail. What else belongs to the work here stands below. */
export function WorkPanel(props: PanelProps & { task: TaskAt<'working'> }) {
  const t = useTranslations('station');
  const { task, picture, person, press, session } = props;
  const { work, notice, question, isJoining } = task;
  const isOpen = question === null;
  const { unit } = work.about;
  const needsRepair = unit !== null && (unit.failure !== null || unit.open.length > 0);
  // What is put in here is asked for below.
  const toJoin = innerToJoin(work, picture).map(({ position }) => position);
  const cautions = (aboutNow(work).unit?.cautions ?? []).filter(
    (caution) => caution.what !== 'missing_inner' || !toJoin.includes(caution.position),
  );
  return (
    <div className={classes.stack}>
      {session.aside === null ? (
        <VerdictPanel
          kind={isUndecided(work) ? 'caution' : 'go'}
          text={<WorkTitle work={work} operation={picture.station.operation} />}
        />
      ) : (
        <p className={classes.strip} data-meaning="act" role="status">
          {t('aside.inWork', { unit: work.unit })}
        </p>
      )}
      {session.aside === null && work.about.provisional && (
        <ProvisionalStrip provisional={work.about.provisional} />
      )}
      {notice !== null && (
        <p className={classes.strip} data-meaning="caution" role="alert">
          <NoticeText notice={notice} />
        </p>
      )}
      <UnitCautions unit={work.unit} cautions={cautions} />
      <InnerUnits {...props} />
      {isOpen && (
        <div className={classes.verdictButtons}>
          <BigButton
            look="pass"
            size="huge"
            shape={IconCheck}
            hint="F8"
            isDisabled={isJoining}
            onPress={() => press({ button: 'pass' })}
          >
            {session.aside === null ? t('pass') : t('aside.pass', { unit: work.unit })}
          </BigButton>
          <BigButton
            look="fail"
            size="huge"
            shape={IconX}
            hint="F9"
            isDisabled={isJoining}
            onPress={() => press({ button: 'fail' })}
          >
            {session.aside === null ? t('fail') : t('aside.fail', { unit: work.unit })}
          </BigButton>
        </div>
      )}
      {isOpen && <ReadingsCard work={work} session={session} picture={picture} press={press} />}
      <PartList work={work} session={session} picture={picture} press={press} />
      <div className={classes.row}>
        {needsRepair && may(person, 'event:part.removed') && (
          <BigButton shape={IconTool} onPress={() => press({ button: 'repair' })}>
            {t('repair.open')}
          </BigButton>
        )}
        {may(person, 'event:unit.signed') && (
          <BigButton shape={IconSignature} onPress={() => press({ button: 'signing' })}>
            {t('sign.open')}
          </BigButton>
        )}
        <BigButton look="quiet" onPress={() => press({ button: 'leave' })}>
          {t('leave')}
        </BigButton>
      </div>
    </div>
  );
}

/** Green is for what was decided. */
function isUndecided({ about }: Work): boolean {
  return (about.provisional?.undecided.length ?? 0) > 0;
}

function WorkTitle({ work, operation }: { work: Work; operation: string }) {
  const t = useTranslations('station');
  const { unit } = work.about;
  const failure = unit?.failure ?? null;
  return (
    <>
      <span className={classes.code}>{work.unit}</span>
      {unit?.product !== null && unit !== null && ` · ${unit.product} ${unit.revision ?? ''}`}
      <br />
      {t(isUndecided(work) ? 'goUndecided' : 'goTo', { operation })}
      {failure !== null && (
        <>
          <br />
          {t('tries', failure)}
        </>
      )}
    </>
  );
}
