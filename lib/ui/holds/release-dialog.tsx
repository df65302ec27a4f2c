'use client';

import { IconLockOpen } from '@tabler/icons-react';
import { useTranslations } from 'use-intl';
import type { OpenHoldEntry } from '@/lib/domain/holds/open-hold-list';
import { BigButton } from '@/lib/ui/shop/big-button';
import { Dialog } from '@/lib/ui/shop/dialog';
import { FactField } from '@/lib/ui/shop/fact-field';
import { FactFormShell } from '@/lib/ui/shop/fact-form-shell';
import { FormOutcome } from '@/lib/ui/shop/form-outcome';
import classes from '@/lib/ui/shop/shop.module.css';
import { useFactForm } from '@/lib/ui/shop/use-fact-form';
import { useHoldReason } from '@/lib/ui/verdict/use-hold-reason';

/** Usual dispositions; any other words will do too. */
const DISPOSITIONS = ['use-as-is', 'rework', 'return-to-supplier', 'scrap'] as const;

/** Ends a hold with what becomes of its target, and why. */
export function ReleaseDialog({
  hold,
  onDone,
  onClose,
}: {
  hold: OpenHoldEntry;
  onDone: (words: string) => void;
  onClose: () => void;
}) {
  const t = useTranslations('holds.releasing');
  const reasonOf = useHoldReason();
  const target = hold.id;
  const { fields, set, faults, state, submit } = useFactForm({
    initial: { disposition: '', reason: '' },
    toDraft: ({ disposition, reason }) => ({
      type: 'hold.released',
      body: { hold: hold.hold, disposition: disposition.trim(), reason: reason.trim() },
    }),
    onRecorded: () => onDone(t('done', { target })),
  });
  return (
    <Dialog title={t('title', { target })} onClose={onClose}>
      <p className={classes.line}>{t('why', { reason: reasonOf(hold.reason) })}</p>
      <FormOutcome state={state} stopped={t('stopped', { target })} />
      <FactFormShell
        title={t('title', { target })}
        isPlain
        state={state}
        submitLabel={t('submit')}
        shape={IconLockOpen}
        onSubmit={submit}
      >
        <fieldset className={classes.plainFieldset} aria-label={t('usual')}>
          <div className={classes.row}>
            {DISPOSITIONS.map((each) => {
              const words = t(`dispositions.${each}`);
              return (
                <BigButton
                  key={each}
                  isPressed={fields.disposition === words}
                  onPress={() => set({ disposition: words })}
                >
                  {words}
                </BigButton>
              );
            })}
          </div>
        </fieldset>
        <FactField
          label={t('disposition')}
          value={fields.disposition}
          fault={faults.disposition}
          onChange={(disposition) => set({ disposition })}
        />
        <FactField
          label={t('reason')}
          value={fields.reason}
          fault={faults.reason}
          isLong
          onChange={(reason) => set({ reason })}
        />
        {fields.disposition === t('dispositions.scrap') && (
          <p className={classes.strip} data-meaning="caution">
            {t('scrapHint')}
          </p>
        )}
      </FactFormShell>
      <div className={classes.row}>
        <BigButton onPress={onClose}>{t('cancel')}</BigButton>
      </div>
    </Dialog>
  );
}
