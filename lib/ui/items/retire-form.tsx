'use client';

import { IconTrashX } from '@tabler/icons-react';
import { useTranslations } from 'use-intl';
import { FactField } from '@/lib/ui/shop/fact-field';
import { FactFormShell } from '@/lib/ui/shop/fact-form-shell';
import { FormOutcome } from '@/lib/ui/shop/form-outcome';
import { useFactForm } from '@/lib/ui/shop/use-fact-form';

/** Takes an item out of use, with the reason. */
export function RetireForm({ item, onDone }: { item: string; onDone: (words: string) => void }) {
  const t = useTranslations('items');
  const { fields, set, faults, state, submit } = useFactForm({
    initial: { reason: '' },
    toDraft: ({ reason }) => ({ type: 'item.retired', body: { item, reason: reason.trim() } }),
    onRecorded: () => onDone(t('done.retire', { item })),
  });
  return (
    <>
      <FormOutcome state={state} stopped={t('stopped', { item })} />
      <FactFormShell
        title={t('form.retire', { item })}
        state={state}
        submitLabel={t('submit.retire')}
        shape={IconTrashX}
        onSubmit={submit}
      >
        <FactField
          label={t('field.reason')}
          value={fields.reason}
          fault={faults.reason}
          isFirst
          onChange={(reason) => set({ reason })}
        />
      </FactFormShell>
    </>
  );
}
