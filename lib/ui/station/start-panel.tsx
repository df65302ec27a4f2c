'use client';

import { TextInput } from '@mantine/core';
import { IconPlayerPlay } from '@tabler/icons-react';
import { useTranslations } from 'use-intl';
import { BigButton } from '@/lib/ui/shop/big-button';
import classes from '@/lib/ui/shop/shop.module.css';
import type { TaskAt } from '@/lib/ui/station/panel-task';
import type { PanelProps } from '@/lib/ui/station/task-panel';
import { VerdictPanel } from '@/lib/ui/verdict/verdict-panel';

/** A serial that nobody has seen, at a station where units begin: start it as what its serial says it is. */
export function StartPanel({ session, task, press }: PanelProps & { task: TaskAt<'new'> }) {
  const t = useTranslations('station');
  const { order, boardLot } = session;
  return (
    <div className={classes.stack}>
      <VerdictPanel kind="caution" text={t('start.title', { unit: task.unit })} />
      <section className={classes.card} data-meaning="act">
        <h2>{t('start.text')}</h2>
        <div className={classes.grid} data-wide>
          {task.options.map(({ product, revision }) => (
            <BigButton
              key={`${product} ${revision}`}
              look="act"
              size="huge"
              shape={IconPlayerPlay}
              isDisabled={task.isSent}
              onPress={() => press({ button: 'start', product, revision })}
            >
              {task.isSent ? t('start.sending') : t('start.as', { product, revision })}
            </BigButton>
          ))}
        </div>
        <TextInput
          size="xl"
          label={t('start.boardLot')}
          value={boardLot}
          onChange={(event) => press({ button: 'set_start', order, boardLot: event.currentTarget.value })}
          autoComplete="off"
          data-takes-scan
        />
        <TextInput
          size="xl"
          label={t('start.order')}
          value={order}
          onChange={(event) => press({ button: 'set_start', order: event.currentTarget.value, boardLot })}
          autoComplete="off"
          data-takes-scan
        />
        <div className={classes.row}>
          <BigButton look="quiet" isDisabled={task.isSent} onPress={() => press({ button: 'leave' })}>
            {t('cancel')}
          </BigButton>
        </div>
      </section>
    </div>
  );
}
