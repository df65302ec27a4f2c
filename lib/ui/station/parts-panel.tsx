'use client';

import { IconCheck } from '@tabler/icons-react';
import { useTranslations } from 'use-intl';
import { innerToJoin } from '@/lib/domain/station/session/inner-to-join';
import { partsToFit } from '@/lib/domain/station/session/processed-draft';
import type { Work } from '@/lib/domain/station/session/session';
import { BigButton } from '@/lib/ui/shop/big-button';
import classes from '@/lib/ui/shop/shop.module.css';
import { PartList } from '@/lib/ui/station/part-list';
import type { PanelProps } from '@/lib/ui/station/task-panel';

/** Before the pass: the lots of the parts that are usually scanned here, and the sub-assemblies that are not in yet. */
export function PartsPanel({ session, picture, press, work }: PanelProps & { work: Work }) {
  const t = useTranslations('station');
  const missing = innerToJoin(work, picture);
  const hasLots = partsToFit(work, session, { picture }).every((part) => part.item !== null);
  return (
    <div className={classes.stack}>
      <section className={classes.card} data-meaning="act" role="status">
        <h2>{missing.length > 0 ? t('parts.incomplete') : t('parts.ask')}</h2>
        {missing.map(({ inner, position }) => (
          <p key={position}>
            <strong>{t('inner.missing', { product: inner, position })}</strong>
          </p>
        ))}
        {(missing.length === 0 || !hasLots) && <p>{t('parts.askText', { unit: work.unit })}</p>}
        {missing.length > 0 && <p>{t('parts.incompleteText', { unit: work.unit })}</p>}
        <div className={classes.row}>
          {hasLots && missing.length === 0 ? (
            <BigButton
              look="pass"
              size="huge"
              shape={IconCheck}
              hint="F8"
              onPress={() => press({ button: 'pass' })}
            >
              {t('parts.record')}
            </BigButton>
          ) : (
            <BigButton onPress={() => press({ button: 'pass_without' })}>
              {missing.length > 0 ? t('parts.passIncomplete') : t('parts.passWithout')}
            </BigButton>
          )}
          <BigButton look="quiet" onPress={() => press({ button: 'leave' })}>
            {t('back')}
          </BigButton>
        </div>
      </section>
      <PartList work={work} session={session} picture={picture} press={press} />
    </div>
  );
}
