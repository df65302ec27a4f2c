'use client';

import { IconCopy, IconInbox } from '@tabler/icons-react';
import { useState } from 'react';
import { useTranslations } from 'use-intl';
import { ITEM_KINDS } from '@/lib/domain/events/vocabulary';
import { type BookedItem, beginReceipt, type Receipt, takenOver } from '@/lib/domain/items/receipt';
import type { LabelFacts } from '@/lib/domain/scanning/label-facts';
import { UnknownPart } from '@/lib/ui/items/unknown-part';
import { BigButton } from '@/lib/ui/shop/big-button';
import { readQuantity } from '@/lib/ui/shop/count-method';
import { FactField } from '@/lib/ui/shop/fact-field';
import { FactFormShell } from '@/lib/ui/shop/fact-form-shell';
import { FormOutcome } from '@/lib/ui/shop/form-outcome';
import classes from '@/lib/ui/shop/shop.module.css';
import { useFactForm } from '@/lib/ui/shop/use-fact-form';

/**
 * Books an item in: kind, part, lot, supplier and quantity, filled in by its label and the item before. The keyboard
 * begins in the first field for every item, so that a scanner goes through all of them the same way.
 */
export function ReceiveForm({
  item,
  label,
  before,
  onBooked,
}: {
  item: string;
  /** What the label of the item says, or null. */
  label: LabelFacts | null;
  /** The item that was booked in before this one, or null. */
  before: BookedItem | null;
  onBooked: (booked: BookedItem, words: string) => void;
}) {
  const t = useTranslations('items');
  const kinds = useTranslations('tags.itemKind');
  const initial = beginReceipt(before, label);
  const [part, setPart] = useState(initial.part);
  const { fields, set, faults, state, submit } = useFactForm<Receipt>({
    initial,
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
    onRecorded: (recorded) => onBooked({ ...recorded, item }, t('done.receive', saidOf(item, recorded))),
  });
  const taken = takenOver(fields, before, label).map((field) => t(`fact.${field}`, { value: fields[field] }));
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
          // The keyboard goes back to the first field when another kind was chosen.
          key={fields.kind}
          label={t('field.part')}
          value={fields.part}
          fault={faults.part}
          isFirst
          onChange={(part) => set({ part })}
          onLeave={setPart}
        />
        <UnknownPart part={fields.part === part ? part : ''} />
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
        {before !== null && taken.length > 0 && (
          <p className={classes.strip} data-meaning="act">
            <IconCopy aria-hidden />
            <span className={classes.grow}>
              {t('takenOver', { item: before.item, facts: taken.join(', ') })}
            </span>
          </p>
        )}
      </FactFormShell>
    </>
  );
}

/** What was recorded of an item, as its GO says it. */
function saidOf(item: string, { part, lot, quantity }: Receipt) {
  const said = (value: string) => (value.trim() === '' ? '–' : value.trim());
  const count = readQuantity(quantity);
  return { item, part: said(part), lot: said(lot), quantity: count === null ? '–' : String(count) };
}

/** A text of the body where one was given; spaces around it were not meant. */
function given(name: string, value: string): Record<string, string> {
  const text = value.trim();
  return text === '' ? {} : { [name]: text };
}
