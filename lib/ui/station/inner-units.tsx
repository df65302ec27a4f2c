'use client';

import { IconArrowBigRight, IconPuzzle } from '@tabler/icons-react';
import { useTranslations } from 'use-intl';
import { innerToJoin } from '@/lib/domain/station/session/inner-to-join';
import { BigButton } from '@/lib/ui/shop/big-button';
import classes from '@/lib/ui/shop/shop.module.css';
import type { TaskAt } from '@/lib/ui/station/panel-task';
import type { PanelProps } from '@/lib/ui/station/task-panel';

/** Sub-assemblies of the unit in work: those in it, those that are usually put in here, and the question about a scan. */
export function InnerUnits({ task, picture, press }: PanelProps & { task: TaskAt<'working'> }) {
  const t = useTranslations('station.inner');
  const { work, question, isJoining } = task;
  const joined = [...(work.about.unit?.joined ?? []), ...work.joined];
  return (
    <>
      {innerToJoin(work, picture).map(({ inner, position }) => (
        <p key={position} className={classes.strip} data-meaning="act">
          <IconPuzzle aria-hidden />
          <span className={classes.grow}>{t('missing', { product: inner, position })}</span>
        </p>
      ))}
      {joined.map(({ unit, position }, index) => (
        <p key={position} className={classes.strip} data-meaning="go" role="status">
          <IconPuzzle aria-hidden />
          <span className={classes.grow}>
            {isJoining && index === joined.length - 1 ? t('joining') : t('joined', { unit, position })}
          </span>
        </p>
      ))}
      {question !== null && (
        <section className={classes.card} data-meaning="act" role="alert">
          <h2>{t('question', { unit: question.unit })}</h2>
          <div className={`${classes.verdictButtons} ${classes.twoOrOne}`}>
            <BigButton look="act" shape={IconPuzzle} onPress={() => press({ button: 'join' })}>
              {t('join', { into: work.unit, position: question.position })}
            </BigButton>
            <BigButton shape={IconArrowBigRight} onPress={() => press({ button: 'not_join' })}>
              {t('next')}
            </BigButton>
          </div>
        </section>
      )}
    </>
  );
}
