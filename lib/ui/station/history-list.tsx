'use client';

import { IconSignature } from '@tabler/icons-react';
import { memo, useState } from 'react';
import { useTranslations } from 'use-intl';
import { may } from '@/lib/domain/people/permissions';
import type { PersonPrincipal } from '@/lib/domain/people/principal';
import type { RecentResult } from '@/lib/domain/station/station-picture';
import { Moment } from '@/lib/ui/moment';
import { BigButton } from '@/lib/ui/shop/big-button';
import classes from '@/lib/ui/shop/shop.module.css';
import { UndoDialog } from '@/lib/ui/station/later-panels';
import { ResultTag } from '@/lib/ui/tags/result-tag';
import { Tag } from '@/lib/ui/tags/tag';

/** The last results given at the station; those who may void an event can undo one. A scan changes none of it. */
export const HistoryList = memo(function HistoryList({
  recent,
  person,
  onUndone,
}: {
  recent: readonly RecentResult[];
  person: PersonPrincipal;
  onUndone: () => void;
}) {
  const t = useTranslations('station.history');
  const [undone, setUndone] = useState<RecentResult | null>(null);
  const mayUndo = may(person, 'event:event.voided');
  return (
    <section className={`${classes.card} ${classes.aside}`} aria-label={t('title')}>
      <h2>{t('title')}</h2>
      {recent.length === 0 ? (
        <p className={classes.quiet}>{t('none')}</p>
      ) : (
        <ol className={classes.list}>
          {recent.map((result) => (
            <li key={result.event}>
              <RecentLine result={result} />
              {mayUndo && !result.isVoided && (
                <BigButton label={t('undoOf', { unit: result.unit })} onPress={() => setUndone(result)}>
                  {t('undo')}
                </BigButton>
              )}
            </li>
          ))}
        </ol>
      )}
      {!mayUndo && recent.length > 0 && <p className={classes.quiet}>{t('askQa')}</p>}
      {undone !== null && (
        <UndoDialog
          result={undone}
          onClose={() => setUndone(null)}
          onUndone={() => {
            setUndone(null);
            onUndone();
          }}
        />
      )}
    </section>
  );
});

function RecentLine({ result }: { result: RecentResult }) {
  const t = useTranslations('station.history');
  const defects = result.defects.map(({ code, position }) =>
    position === null ? code : `${code} ${position}`,
  );
  return (
    <span className={classes.grow}>
      <span className={classes.spread}>
        <span className={classes.code}>{result.unit}</span>
        <span className={classes.tags}>
          {result.result === null ? (
            <Tag meaning="act" shape={IconSignature}>
              {t('signed')}
            </Tag>
          ) : (
            <ResultTag result={result.result} />
          )}
        </span>
      </span>
      <span className={classes.quiet}>
        <Moment at={result.at} />
        {result.operator !== null && ` · ${result.operator}`}
        {defects.length > 0 && ` · ${defects.join(', ')}`}
        {result.isVoided && ` · ${t('voided')}`}
        {result.isHeld && ` · ${t('held')}`}
      </span>
    </span>
  );
}
