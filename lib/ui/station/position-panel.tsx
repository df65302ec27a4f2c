'use client';

import { useTranslations } from 'use-intl';
import { positionsAt } from '@/lib/domain/station/product-picture';
import { BigButton } from '@/lib/ui/shop/big-button';
import { PositionChoice } from '@/lib/ui/shop/position-choice';
import classes from '@/lib/ui/shop/shop.module.css';
import type { TaskAt } from '@/lib/ui/station/panel-task';
import { StrangePosition } from '@/lib/ui/station/strange-position';
import type { PanelProps } from '@/lib/ui/station/task-panel';

/** Fail, second question: where, by the reference designators of this product here. */
export function PositionPanel({ picture, press, task }: PanelProps & { task: TaskAt<'position'> }) {
  const t = useTranslations('station');
  const { product } = task.work.about;
  const positions = product === null ? [] : positionsAt(product, picture.station.code);
  const title = t('position.title', { code: task.code });
  const choose = (position: string | null): void => press({ button: 'position', position });
  if (task.strange !== null && product !== null)
    return (
      <StrangePosition
        position={task.strange}
        product={product}
        onChoose={choose}
        onBack={() => press({ button: 'leave' })}
      />
    );
  const isNewCode =
    !picture.defects.some(({ code }) => code === task.code) && !picture.defectsElsewhere.includes(task.code);
  return (
    <section className={classes.card} data-meaning="act" aria-label={title}>
      <h2>{title}</h2>
      {isNewCode && (
        <p className={classes.strip} data-meaning="caution" role="alert">
          {t('position.newCode', { code: task.code })}
        </p>
      )}
      <PositionChoice positions={positions} onChoose={choose} />
      <div className={classes.row}>
        <BigButton onPress={() => choose(null)}>{t('position.noPosition')}</BigButton>
        <BigButton look="quiet" hint="Esc" onPress={() => press({ button: 'leave' })}>
          {t('back')}
        </BigButton>
      </div>
    </section>
  );
}
