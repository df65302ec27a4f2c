'use client';

import { useTranslations } from 'use-intl';
import type { Work } from '@/lib/domain/station/session/session';
import { BigButton } from '@/lib/ui/shop/big-button';
import { ChoiceGrid } from '@/lib/ui/shop/choice-grid';
import classes from '@/lib/ui/shop/shop.module.css';
import type { PanelProps } from '@/lib/ui/station/task-panel';

/** Fail, first question: the defect code, from those given here lately, scanned or typed. */
export function DefectPanel({ picture, press, work }: PanelProps & { work: Work }) {
  const t = useTranslations('station');
  const codes = picture.defects.map((defect) => defect.code);
  return (
    <section className={classes.card} data-meaning="act" aria-label={t('defect.title', { unit: work.unit })}>
      <h2>{t('defect.title', { unit: work.unit })}</h2>
      <p className={classes.quiet}>{codes.length === 0 ? t('defect.none') : t('defect.usual')}</p>
      <ChoiceGrid
        label={t('defect.usual')}
        codes={codes}
        onChoose={(code) => press({ button: 'defect', code })}
      />
      {picture.defectsElsewhere.length > 0 && (
        <>
          <p className={classes.quiet}>{t('defect.elsewhere')}</p>
          <ChoiceGrid
            label={t('defect.elsewhere')}
            codes={picture.defectsElsewhere}
            onChoose={(code) => press({ button: 'defect', code })}
          />
        </>
      )}
      <div className={classes.row}>
        {work.defects.length === 0 && (
          <BigButton onPress={() => press({ button: 'record_fail' })}>{t('defect.noCode')}</BigButton>
        )}
        <BigButton look="quiet" hint="Esc" onPress={() => press({ button: 'leave' })}>
          {t('back')}
        </BigButton>
      </div>
    </section>
  );
}
