'use client';

import { IconArrowBackUp } from '@tabler/icons-react';
import { useTranslations } from 'use-intl';
import type { UnitPicture } from '@/lib/domain/station/scan-picture';
import { FactField } from '@/lib/ui/shop/fact-field';
import { FactFormShell } from '@/lib/ui/shop/fact-form-shell';
import { FormOutcome } from '@/lib/ui/shop/form-outcome';
import classes from '@/lib/ui/shop/shop.module.css';
import { useFactForm } from '@/lib/ui/shop/use-fact-form';

/** Receives a return; the customer is the one to whom the record says it was shipped. */
export function ReturnForm({ unit, onDone }: { unit: UnitPicture; onDone: () => void }) {
  const t = useTranslations('returns');
  const isShipped = unit.place?.kind === 'shipped';
  const { fields, set, faults, state, submit } = useFactForm({
    initial: {
      customer: unit.place?.kind === 'shipped' ? unit.place.customer : '',
      reference: '',
      symptom: '',
    },
    toDraft: ({ customer, reference, symptom }) => ({
      type: 'unit.returned',
      body: {
        unit: unit.unit,
        ...(customer.trim() !== '' && { customer: customer.trim() }),
        ...(reference.trim() !== '' && { reference: reference.trim() }),
        ...(symptom.trim() !== '' && { symptom: symptom.trim() }),
      },
    }),
    onRecorded: onDone,
  });
  return (
    <>
      <FormOutcome state={state} stopped={t('stopped', { unit: unit.unit })} />
      {!isShipped && (
        <p className={classes.strip} data-meaning="caution" role="status">
          {t('notShipped', { unit: unit.unit })}
        </p>
      )}
      <FactFormShell
        title={t('form.title', { unit: unit.unit })}
        state={state}
        submitLabel={t('form.submit')}
        shape={IconArrowBackUp}
        onSubmit={submit}
      >
        <FactField
          label={t('form.customer')}
          value={fields.customer}
          fault={faults.customer}
          onChange={(customer) => set({ customer })}
        />
        <FactField
          label={t('form.reference')}
          value={fields.reference}
          fault={faults.reference}
          onChange={(reference) => set({ reference })}
        />
        <FactField
          label={t('form.symptom')}
          value={fields.symptom}
          fault={faults.symptom}
          isLong
          onChange={(symptom) => set({ symptom })}
        />
      </FactFormShell>
    </>
  );
}
