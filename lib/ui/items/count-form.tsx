'use client';

import { IconListNumbers } from '@tabler/icons-react';
import { useTranslations } from 'use-intl';
import { BigButton } from '@/lib/ui/shop/big-button';
import { CountDoubt } from '@/lib/ui/shop/count-doubt';
import { COUNT_METHODS, type CountMethod, readQuantity } from '@/lib/ui/shop/count-method';
import { FactField } from '@/lib/ui/shop/fact-field';
import { FactFormShell } from '@/lib/ui/shop/fact-form-shell';
import { FormOutcome } from '@/lib/ui/shop/form-outcome';
import classes from '@/lib/ui/shop/shop.module.css';
import { useCountDoubt } from '@/lib/ui/shop/use-count-doubt';
import { useFactForm } from '@/lib/ui/shop/use-fact-form';

type Fields = { quantity: string; method: CountMethod };

/** Says how much is left of an item, and how that is known. */
export function CountForm({
  item,
  knownQuantity,
  onDone,
}: {
  item: string;
  knownQuantity: number | null;
  onDone: (words: string) => void;
}) {
  const t = useTranslations('items');
  const doubts = useTranslations('record.countDoubt');
  const { fields, set, faults, state, submit } = useFactForm<Fields>({
    initial: { quantity: '', method: 'by-hand' },
    toDraft: ({ quantity, method }) => ({
      type: 'item.counted',
      body: { item, method, quantity: readQuantity(quantity) ?? (quantity === '' ? undefined : quantity) },
    }),
    onRecorded: ({ quantity }) => onDone(t('done.count', { item, quantity: String(readQuantity(quantity)) })),
  });
  const doubt = useCountDoubt(knownQuantity, readQuantity(fields.quantity));
  return (
    <>
      <FormOutcome state={state} stopped={t('stopped', { item })} />
      <FactFormShell
        title={t('form.count', { item })}
        state={state}
        submitLabel={doubt.doubted === null ? t('submit.count') : doubts('save', { quantity: doubt.doubted })}
        shape={IconListNumbers}
        onSubmit={async () => {
          if (doubt.mayPass()) await submit();
        }}
      >
        <FactField
          label={t('field.count')}
          value={fields.quantity}
          fault={faults.quantity === 'invalid_type' ? 'not_a_number' : faults.quantity}
          inputMode="decimal"
          isFirst
          onChange={(quantity) => set({ quantity })}
        />
        <fieldset className={classes.plainFieldset}>
          <legend className={classes.line}>{t('field.method')}</legend>
          <div className={classes.row}>
            {COUNT_METHODS.map((method) => (
              <BigButton key={method} isPressed={fields.method === method} onPress={() => set({ method })}>
                {t(`method.${method}`)}
              </BigButton>
            ))}
          </div>
        </fieldset>
        <CountDoubt doubted={doubt.doubted} known={knownQuantity} />
      </FactFormShell>
    </>
  );
}
