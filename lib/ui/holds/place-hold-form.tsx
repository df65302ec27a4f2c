'use client';

import { IconHandStop } from '@tabler/icons-react';
import { useTranslations } from 'use-intl';
import { HOLD_TARGET_KINDS } from '@/lib/domain/events/vocabulary';
import type { HoldTarget } from '@/lib/ui/holds/holds-app';
import { BigButton } from '@/lib/ui/shop/big-button';
import { FactField } from '@/lib/ui/shop/fact-field';
import { FactFormShell } from '@/lib/ui/shop/fact-form-shell';
import { FormOutcome } from '@/lib/ui/shop/form-outcome';
import classes from '@/lib/ui/shop/shop.module.css';
import { useFactForm } from '@/lib/ui/shop/use-fact-form';

type Fields = HoldTarget & { reason: string };

/** Stops a unit, an item, a lot or a container until QA has decided. */
export function PlaceHoldForm({
  target,
  onDone,
  onCancel,
}: {
  target: HoldTarget | null;
  onDone: (words: string) => void;
  onCancel: () => void;
}) {
  const t = useTranslations('holds.form');
  const { fields, set, faults, state, submit } = useFactForm<Fields>({
    initial: { kind: target?.kind ?? 'unit', id: target?.id ?? '', reason: '' },
    toDraft: ({ kind, id, reason }) => ({
      type: 'hold.placed',
      body: { target: { kind, id: id.trim() }, reason: reason.trim() },
    }),
    onRecorded: ({ id }) => onDone(t('done', { target: id.trim() })),
  });
  return (
    <>
      <FormOutcome state={state} stopped={t('stopped', { target: fields.id.trim() })} />
      <FactFormShell
        title={t('title')}
        state={state}
        submitLabel={t('submit')}
        shape={IconHandStop}
        onSubmit={submit}
      >
        <fieldset className={classes.plainFieldset}>
          <legend className={classes.line}>{t('kind')}</legend>
          <div className={classes.row}>
            {HOLD_TARGET_KINDS.map((kind) => (
              <BigButton key={kind} isPressed={fields.kind === kind} onPress={() => set({ kind })}>
                {t(`target.${kind}`)}
              </BigButton>
            ))}
          </div>
        </fieldset>
        <p className={classes.quiet}>{t(`means.${fields.kind}`)}</p>
        <FactField
          label={t('id')}
          value={fields.id}
          fault={faults['target/id']}
          isFirst={target === null}
          onChange={(id) => set({ id })}
        />
        <FactField
          label={t('reason')}
          value={fields.reason}
          fault={faults.reason}
          isLong
          isFirst={target !== null}
          onChange={(reason) => set({ reason })}
        />
      </FactFormShell>
      <div className={classes.row}>
        <BigButton onPress={onCancel}>{t('cancel')}</BigButton>
      </div>
    </>
  );
}
