'use client';

import { TextInput } from '@mantine/core';
import { useState } from 'react';
import { useTranslations } from 'use-intl';
import { partsAt } from '@/lib/domain/station/product-picture';
import { BigButton } from '@/lib/ui/shop/big-button';
import { ChoiceGrid } from '@/lib/ui/shop/choice-grid';
import classes from '@/lib/ui/shop/shop.module.css';
import type { TaskAt } from '@/lib/ui/station/panel-task';
import type { PanelProps } from '@/lib/ui/station/task-panel';
import { VerdictPanel } from '@/lib/ui/verdict/verdict-panel';

type Props = PanelProps & { task: TaskAt<'repairing'>; position: string };

/** One position of a repair: its part comes off, then another one goes on. */
export function RepairPosition(props: Props) {
  const { repair } = props.task;
  if (!repair.isRemoved) return <TakeOff key={props.position} {...props} />;
  if (repair.chosen?.kind === 'donor') return <FromDonor {...props} donor={repair.chosen.unit} />;
  return <PutOn {...props} />;
}

function TakeOff({ task, position, press }: Props) {
  const t = useTranslations('station');
  const defects = task.repair.about.unit?.failure?.defects ?? [];
  const known = defects.find((defect) => defect.position === position)?.code ?? '';
  const [reason, setReason] = useState(known);
  return (
    <section className={classes.card} data-meaning="act" aria-label={t('repair.remove', { position })}>
      <h2>{t('repair.remove', { position })}</h2>
      <TextInput
        size="xl"
        label={t('repair.reason')}
        value={reason}
        maxLength={2000}
        onChange={(event) => setReason(event.currentTarget.value)}
        autoComplete="off"
      />
      <BigButton
        look="act"
        size="huge"
        isDisabled={task.isSent}
        onPress={() => press({ button: 'removed', reason: reason.trim() })}
      >
        {task.isSent ? t('repair.sending') : t('repair.removed')}
      </BigButton>
      <div className={classes.row}>
        <BigButton look="quiet" isDisabled={task.isSent} onPress={() => press({ button: 'leave_empty' })}>
          {t('back')}
        </BigButton>
      </div>
    </section>
  );
}

function PutOn({ task, position, press }: Props) {
  const t = useTranslations('station.repair');
  const { chosen, about } = task.repair;
  const parts = about.product === null ? [] : partsAt(about.product, position);
  const isWrong = chosen?.kind === 'item' && !chosen.isExpected && !task.isSent;
  return (
    <section className={classes.card} data-meaning="act" aria-label={t('fit', { position })}>
      {isWrong && (
        <>
          <VerdictPanel
            kind="stop"
            text={t('wrong.text', {
              item: chosen.item.item,
              part: chosen.item.part ?? '–',
              position,
              expected: parts.join(', '),
            })}
          >
            <p className={classes.todo}>{t('wrong.todo')}</p>
          </VerdictPanel>
          <div className={classes.row}>
            <BigButton onPress={() => press({ button: 'fitted_already' })}>{t('wrong.fitted')}</BigButton>
            <span className={classes.quiet}>{t('wrong.held')}</span>
          </div>
        </>
      )}
      <h2>{t('fit', { position })}</h2>
      <p>{t('fitHint', { parts: parts.length === 0 ? '' : t('fitParts', { parts: parts.join(', ') }) })}</p>
      <p className={classes.quiet}>{task.isSent ? t('sending') : t('fitDonor')}</p>
      <div className={classes.row}>
        <BigButton isDisabled={task.isSent} onPress={() => press({ button: 'leave_empty' })}>
          {t('leaveEmpty')}
        </BigButton>
      </div>
    </section>
  );
}

function FromDonor({ task, position, press, donor }: Props & { donor: string }) {
  const t = useTranslations('station.repair');
  const parts = task.repair.about.product === null ? [] : partsAt(task.repair.about.product, position);
  const lines = task.repair.about.product?.lines ?? [];
  const same = lines
    .filter((line) => line.part !== null && parts.includes(line.part))
    .flatMap((line) => line.positions);
  return (
    <section className={classes.card} data-meaning="act" aria-label={t('donor', { unit: donor })}>
      <h2>{t('donor', { unit: donor })}</h2>
      <ChoiceGrid
        isDense
        label={t('donor', { unit: donor })}
        codes={[...new Set([position, ...same])]}
        onChoose={(chosen) => press({ button: 'donor_position', position: chosen })}
      />
      <div className={classes.row}>
        <BigButton isDisabled={task.isSent} onPress={() => press({ button: 'leave_empty' })}>
          {t('leaveEmpty')}
        </BigButton>
      </div>
    </section>
  );
}
