'use client';

import { IconCheck, IconTool } from '@tabler/icons-react';
import { useTranslations } from 'use-intl';
import { openPositions } from '@/lib/domain/station/session/repair-unit';
import type { Repair } from '@/lib/domain/station/session/session';
import { BigButton } from '@/lib/ui/shop/big-button';
import { ChoiceGrid } from '@/lib/ui/shop/choice-grid';
import { PositionChoice } from '@/lib/ui/shop/position-choice';
import classes from '@/lib/ui/shop/shop.module.css';
import { NoticeText } from '@/lib/ui/station/notice-text';
import type { TaskAt } from '@/lib/ui/station/panel-task';
import { RepairPosition } from '@/lib/ui/station/repair-position';
import { StrangePosition } from '@/lib/ui/station/strange-position';
import type { PanelProps } from '@/lib/ui/station/task-panel';

/** Repair: which position, the part off, the new part on; again for each, then done. */
export function RepairPanel(props: PanelProps & { task: TaskAt<'repairing'> }) {
  const t = useTranslations('station');
  const { task, press } = props;
  const { repair, notice, isSent } = task;
  return (
    <div className={classes.stack}>
      <div className={classes.banner}>
        <IconTool aria-hidden />
        <p>
          <RepairTitle repair={repair} />
        </p>
      </div>
      {notice !== null && (
        <p className={classes.strip} data-meaning="caution" role="alert">
          <NoticeText notice={notice} />
        </p>
      )}
      {repair.done.length > 0 && (
        <ul className={classes.list}>
          {repair.done.map(({ position, what, source }) => (
            <li key={`${position} ${what}`}>
              <IconCheck aria-hidden />
              <span className={classes.grow}>
                {t(`repair.done.${what}`, { position, source: source ?? '' })}
              </span>
            </li>
          ))}
        </ul>
      )}
      {repair.position === null ? (
        <WhichPosition {...props} />
      ) : (
        <RepairPosition {...props} position={repair.position} />
      )}
      <div className={classes.row}>
        {repair.position === null && repair.strange === null && (
          <BigButton
            look="act"
            shape={IconCheck}
            isDisabled={isSent}
            onPress={() => press({ button: 'leave' })}
          >
            {repair.done.length === 0 ? t('repair.finishNothing') : t('repair.finish')}
          </BigButton>
        )}
      </div>
    </div>
  );
}

function RepairTitle({ repair }: { repair: Repair }) {
  const t = useTranslations('station.repair');
  const failure = repair.about.unit?.failure ?? null;
  const defects = (failure?.defects ?? []).map(({ code, position }) =>
    position === null ? code : t('defectAt', { code, position }),
  );
  return (
    <>
      <strong>{t('title', { unit: repair.unit })}</strong>
      {failure !== null && (
        <>
          <br />
          {defects.length === 0
            ? t('failedPlain', { operation: failure.operation })
            : t('failed', { operation: failure.operation, defects: defects.join(', ') })}
        </>
      )}
    </>
  );
}

function WhichPosition({ task: { repair }, press }: PanelProps & { task: TaskAt<'repairing'> }) {
  const t = useTranslations('station.repair');
  const { unit, product } = repair.about;
  const suspects = [
    ...openPositions(repair),
    ...(unit?.failure?.defects ?? []).flatMap((defect) => defect.position ?? []),
  ];
  const first = [...new Set(suspects)];
  const all = [...new Set((product?.lines ?? []).flatMap((line) => line.positions))].filter(
    (position) => !first.includes(position),
  );
  const choose = (position: string): void => press({ button: 'repair_position', position });
  if (repair.strange !== null && product !== null)
    return (
      <StrangePosition
        position={repair.strange}
        product={product}
        onChoose={choose}
        onBack={() => press({ button: 'leave' })}
      />
    );
  return (
    <section className={classes.card} data-meaning="act" aria-label={t('which')}>
      <h2>{t('which')}</h2>
      {first.length > 0 && <ChoiceGrid isDense label={t('which')} codes={first} onChoose={choose} />}
      <PositionChoice positions={all} onChoose={choose} />
    </section>
  );
}
