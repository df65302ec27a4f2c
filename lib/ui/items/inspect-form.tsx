'use client';

import { IconCheck, IconX } from '@tabler/icons-react';
import { useTranslations } from 'use-intl';
import type { Result } from '@/lib/domain/events/vocabulary';
import { BigButton } from '@/lib/ui/shop/big-button';
import { FormOutcome } from '@/lib/ui/shop/form-outcome';
import classes from '@/lib/ui/shop/shop.module.css';
import { useFactForm } from '@/lib/ui/shop/use-fact-form';

/** Says whether an item passed its inspection: one press. */
export function InspectForm({ item, onDone }: { item: string; onDone: (words: string) => void }) {
  const t = useTranslations('items');
  const { state, submitWith } = useFactForm<{ result: Result }>({
    initial: { result: 'pass' },
    toDraft: ({ result }) => ({ type: 'item.inspected', body: { item, result } }),
    onRecorded: ({ result }) =>
      onDone(result === 'pass' ? t('done.inspectPass', { item }) : t('done.inspectFail', { item })),
  });
  const isSending = state.kind === 'sending';
  return (
    <>
      <FormOutcome state={state} stopped={t('stopped', { item })} />
      <section className={classes.card} data-meaning="act" aria-label={t('form.inspect', { item })}>
        <h2>{t('form.inspect', { item })}</h2>
        <div className={classes.verdictButtons}>
          <BigButton
            look="pass"
            size="huge"
            shape={IconCheck}
            isDisabled={isSending}
            onPress={() => void submitWith({ result: 'pass' })}
          >
            {t('result.pass')}
          </BigButton>
          <BigButton
            look="fail"
            size="huge"
            shape={IconX}
            isDisabled={isSending}
            onPress={() => void submitWith({ result: 'fail' })}
          >
            {t('result.fail')}
          </BigButton>
        </div>
        <p className={classes.quiet}>{t('failHint')}</p>
      </section>
    </>
  );
}
