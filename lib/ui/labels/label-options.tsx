'use client';

import { Textarea, TextInput } from '@mantine/core';
import { IconEye } from '@tabler/icons-react';
import { useTranslations } from 'use-intl';
import { LABEL_KINDS } from '@/lib/domain/events/vocabulary';
import { SYMBOLS } from '@/lib/domain/labels/arrange-label';
import { STOCK_FIELDS } from '@/lib/domain/labels/label-form';
import { STOCK_PRESETS } from '@/lib/domain/labels/label-stock';
import classes from '@/lib/ui/labels/labels.module.css';
import type { LabelsPageProps } from '@/lib/ui/labels/labels-page';
import { BigButton } from '@/lib/ui/shop/big-button';
import shop from '@/lib/ui/shop/shop.module.css';

const PRESETS = Object.keys(STOCK_PRESETS).filter(
  (name): name is keyof typeof STOCK_PRESETS => name in STOCK_PRESETS,
);

/** What to print and on what; a form that asks for the page again, and so needs no script. */
export function LabelOptions({ form, stock, mayBadges }: LabelsPageProps) {
  const t = useTranslations('labels');
  const kinds = useTranslations('tags.labelKind');
  const numbers: Readonly<Record<string, unknown>> = stock;
  return (
    <form className={shop.card} action="/labels" method="get" aria-label={t('title')}>
      <Choice
        name="kind"
        legend={t('kind')}
        value={form.kind}
        options={LABEL_KINDS.filter((kind) => kind !== 'badge' || mayBadges).map((kind) => [
          kind,
          kinds(kind),
        ])}
      />
      <Textarea
        size="xl"
        name="codes"
        label={t('codes')}
        description={t('codesHint')}
        defaultValue={form.codes}
        autosize
        minRows={2}
        maxRows={8}
        spellCheck={false}
        autoCapitalize="none"
      />
      <div className={classes.numbers}>
        <NumberField name="count" label={t('count')} value={form.count} />
        <NumberField name="copies" label={t('copies')} value={form.copies} />
        {stock.kind === 'sheet' && <NumberField name="skip" label={t('skip')} value={form.skip} />}
      </div>
      <Choice
        name="symbol"
        legend={t('symbol')}
        value={form.symbol}
        options={SYMBOLS.map((symbol) => [symbol, t(`symbols.${symbol}`)])}
      />
      <Choice
        name="stock"
        legend={t('stock')}
        value={form.stock}
        options={PRESETS.map((preset) => [preset, t(`stocks.${preset}`)])}
        onChange={(event) => {
          // The numbers below are those of another stock.
          for (const input of event.currentTarget.form?.querySelectorAll('[data-stock-number]') ?? [])
            if (input instanceof HTMLInputElement) input.value = '';
          event.currentTarget.form?.requestSubmit();
        }}
      />
      <div className={classes.numbers}>
        {STOCK_FIELDS[stock.kind].map((name) => (
          <NumberField
            key={name}
            name={name}
            label={t(`stockFields.${name}`)}
            value={numbers[name]}
            isOfStock
          />
        ))}
      </div>
      <BigButton type="submit" look="act" shape={IconEye}>
        {t('show')}
      </BigButton>
    </form>
  );
}

function NumberField({
  name,
  label,
  value,
  isOfStock = false,
}: {
  name: string;
  label: string;
  value: unknown;
  isOfStock?: boolean;
}) {
  return (
    <TextInput
      size="lg"
      name={name}
      label={label}
      defaultValue={String(value)}
      inputMode="decimal"
      autoComplete="off"
      {...(isOfStock && { 'data-stock-number': true })}
    />
  );
}

function Choice({
  name,
  legend,
  value,
  options,
  onChange,
}: {
  name: string;
  legend: string;
  value: string;
  options: (readonly [value: string, words: string])[];
  onChange?: (event: { currentTarget: HTMLInputElement }) => void;
}) {
  return (
    <fieldset className={shop.plainFieldset}>
      <legend className={shop.line}>{legend}</legend>
      <div className={classes.choices}>
        {options.map(([option, words]) => (
          <label key={option} className={classes.choice}>
            <input
              type="radio"
              name={name}
              value={option}
              defaultChecked={option === value}
              {...(onChange !== undefined && { onChange })}
            />
            {words}
          </label>
        ))}
      </div>
    </fieldset>
  );
}
