'use client';

import { useTranslations } from 'use-intl';
import { positionsAt } from '@/lib/domain/station/product-picture';
import { BigButton } from '@/lib/ui/shop/big-button';
import { PositionChoice } from '@/lib/ui/shop/position-choice';
import classes from '@/lib/ui/shop/shop.module.css';
import type { TaskAt } from '@/lib/ui/station/panel-task';
import type { PanelProps } from '@/lib/ui/station/task-panel';

/** Fail, second question: where, by the reference designators of this product here. */
export function PositionPanel({ picture, press, task }: PanelProps & { task: TaskAt<'position'> }) {
  const t = useTranslations('station');
  const { product } = task.work.about;
  const positions = product === null ? [] : positionsAt(product, picture.station.code);
  const title = t('position.title', { code: task.code });
  return (
    <section className={classes.card} data-meaning="act" aria-label={title}>
      <h2>{title}</h2>
      <PositionChoice
        positions={positions}
        onChoose={(position) => press({ button: 'position', position })}
      />
      <div className={classes.row}>
        <BigButton onPress={() => press({ button: 'position', position: null })}>
          {t('position.noPosition')}
        </BigButton>
        <BigButton look="quiet" hint="Esc" onPress={() => press({ button: 'leave' })}>
          {t('back')}
        </BigButton>
      </div>
    </section>
  );
}
