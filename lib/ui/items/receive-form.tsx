'use client';

import { IconInbox } from '@tabler/icons-react';
import { useTranslations } from 'use-intl';
import { ITEM_KINDS, type ItemKind } from '@/lib/domain/events/vocabulary';
import type { LabelFacts } from '@/lib/domain/scanning/label-facts';
import { BigButton } from '@/lib/ui/shop/big-button';
import { readQuantity } from '@/lib/ui/shop/count-method';
import { FactField } from '@/lib/ui/shop/fact-field';
import { FactFormShell } from '@/lib/ui/shop/fact-form-shell';
import { FormOutcome } from '@/lib/ui/shop/form-outcome';
import classes from '@/lib/ui/shop/shop.module.css';
import { useFactForm } from '@/lib/ui/shop/use-fact-form';

/** What the next item of a delivery most likely shares with this one. */
export type ReceiveMemory = { kind: ItemKind; part: string; lot: string; supplier: string; quantity: string };

const FIRST: ReceiveMemory = { kind: 'reel', part: '', lot: '', supplier: '', quantity: '' };

/** Books an item in: kind, part, lot, supplier and quantity, filled in by its label and the item before. */
export function ReceiveForm({
  item,
  label,
  memory,
  onMemory,
  onDone,
}: {
  item: string;
  /** What the label of the item says, or null. */
  label: LabelFacts | null;
  memory: ReceiveMemory | null;
  onMemory: (memory: ReceiveMemory) => void;
  onDone: (words: string) => void;
}) {
  const t = useTranslations('items');
  const kinds = useTranslations('tags.itemKind');
  const { fields, set, faults, state, submit } = useFactForm({
    initial: withLabel(memory ?? FIRST, label),
    toDraft: ({ kind, part, lot, supplier, quantity }) => ({
      type: 'item.received',
      body: {
        item,
        kind,
        ...given('part', part),
        ...given('lot', lot),
        ...given('supplier', supplier),
        ...(quantity.trim() !== '' && { quantity: readQuantity(quantity) ?? quantity }),
      },
    }),
    onRecorded: (recorded) => {
      onMemory(recorded);
      onDone(t('done.receive', { item }));
    },
  });
  return (
    <>
      <FormOutcome state={state} stopped={t('stopped', { item })} />
      <FactFormShell
        title={t('form.receive', { item })}
        state={state}
        submitLabel={t('submit.receive')}
        shape={IconInbox}
        onSubmit={submit}
      >
        <fieldset className={classes.plainFieldset}>
          <legend className={classes.line}>{t('field.kind')}</legend>
          <div className={classes.row}>
            {ITEM_KINDS.map((kind) => (
              <BigButton key={kind} isPressed={fields.kind === kind} onPress={() => set({ kind })}>
                {kinds(kind)}
              </BigButton>
            ))}
          </div>
        </fieldset>
        <FactField
          label={t('field.part')}
          value={fields.part}
          fault={faults.part}
          isFirst={memory === null && label === null}
          onChange={(part) => set({ part })}
        />
        <FactField
          label={t('field.lot')}
          value={fields.lot}
          fault={faults.lot}
          onChange={(lot) => set({ lot })}
        />
        <FactField
          label={t('field.supplier')}
          value={fields.supplier}
          fault={faults.supplier}
          onChange={(supplier) => set({ supplier })}
        />
        <FactField
          label={t('field.quantity')}
          value={fields.quantity}
          fault={faults.quantity === 'invalid_type' ? 'not_a_number' : faults.quantity}
          inputMode="decimal"
          onChange={(quantity) => set({ quantity })}
        />
      </FactFormShell>
    </>
  );
}

/** What the label of this item says goes before what the one before it was. */
function withLabel(memory: ReceiveMemory, label: LabelFacts | null): ReceiveMemory {
  if (label === null) return memory;
  return {
    kind: memory.kind,
    part: label.part ?? memory.part,
    lot: label.lot ?? memory.lot,
    supplier: label.supplier ?? memory.supplier,
    quantity: label.quantity ?? memory.quantity,
  };
}

/** A text of the body where one was given; spaces around it were not meant. */
function given(name: string, value: string): Record<string, string> {
  const text = value.trim();
  return text === '' ? {} : { [name]: text };
}
