'use client';

import { TextInput } from '@mantine/core';
import { IconPlus, IconX } from '@tabler/icons-react';
import { useTranslations } from 'use-intl';
import type { DefectDraft, Work } from '@/lib/domain/station/session/session';
import { BigButton } from '@/lib/ui/shop/big-button';
import classes from '@/lib/ui/shop/shop.module.css';
import type { PanelProps } from '@/lib/ui/station/task-panel';

/** Fail, last look: what will be recorded; one press records it. */
export function ConfirmPanel({ press, work }: PanelProps & { work: Work }) {
  const t = useTranslations('station');
  const title = t('confirm.title', { unit: work.unit });
  const wordsOf = ({ code, position }: DefectDraft): string =>
    position === null ? t('confirm.noPosition', { code }) : t('confirm.at', { code, position });
  return (
    <section className={classes.card} data-meaning="act" aria-label={title}>
      <h2>{title}</h2>
      <ul className={classes.list}>
        {work.defects.map((defect, index) => (
          <li key={wordsOf(defect)}>
            <strong className={classes.grow}>{wordsOf(defect)}</strong>
            <BigButton
              look="quiet"
              shape={IconX}
              label={t('confirm.remove', { defect: wordsOf(defect) })}
              onPress={() => press({ button: 'remove_defect', index })}
            >
              {''}
            </BigButton>
          </li>
        ))}
      </ul>
      <div className={`${classes.verdictButtons} ${classes.twoOrOne}`}>
        <BigButton look="fail" size="huge" hint="F9" onPress={() => press({ button: 'record_fail' })}>
          {t('confirm.record')}
        </BigButton>
        <BigButton shape={IconPlus} onPress={() => press({ button: 'another_defect' })}>
          {t('confirm.another')}
        </BigButton>
      </div>
      <TextInput
        size="xl"
        label={t('confirm.note')}
        value={work.note}
        maxLength={2000}
        autoComplete="off"
        onChange={(event) => press({ button: 'note', note: event.currentTarget.value })}
      />
      <div className={classes.row}>
        <BigButton look="quiet" hint="Esc" onPress={() => press({ button: 'leave' })}>
          {t('back')}
        </BigButton>
      </div>
    </section>
  );
}
