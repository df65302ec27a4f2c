'use client';

import { useState } from 'react';
import { useTranslations } from 'use-intl';
import type { ChangeoverInput } from '@/lib/domain/station/changeover/changeover';
import type { ChangeoverPicture } from '@/lib/domain/station/changeover-picture';
import { type SlotPicture, slotsFor } from '@/lib/domain/station/slot-picture';
import classes from '@/lib/ui/changeover/changeover.module.css';
import { SlotCard } from '@/lib/ui/changeover/slot-card';
import { BigButton } from '@/lib/ui/shop/big-button';
import shop from '@/lib/ui/shop/shop.module.css';

/** All slots in their order, and how many are ready for the chosen product. */
export function SlotGrid({
  picture,
  chosen,
  wanted,
  dispatch,
}: {
  picture: ChangeoverPicture;
  chosen: string | null;
  /** Names of the slots where the item in the hand belongs. */
  wanted: readonly string[];
  dispatch: (input: ChangeoverInput) => void;
}) {
  const t = useTranslations('changeover');
  const { products, station } = picture;
  const [key, setKey] = useState<string | null>(null);
  const onlyOne = products.length === 1 ? products[0] : undefined;
  const product = products.find((each) => keyOf(each) === key) ?? onlyOne;
  const slots = product === undefined ? picture.slots : slotsFor(picture.slots, product);
  if (picture.slots.length === 0) return null;
  return (
    <section className={shop.stack} aria-label={t('grid', { station: station.code })}>
      {products.length > 1 && (
        <fieldset className={shop.plainFieldset}>
          <legend className={shop.heading}>{t('progress.label')}</legend>
          <div className={shop.row}>
            <BigButton isPressed={product === undefined} onPress={() => setKey(null)}>
              {t('progress.all')}
            </BigButton>
            {products.map((each) => (
              <BigButton key={keyOf(each)} isPressed={each === product} onPress={() => setKey(keyOf(each))}>
                {keyOf(each)}
              </BigButton>
            ))}
          </div>
        </fieldset>
      )}
      <Progress slots={slots} product={product === undefined ? null : keyOf(product)} />
      <ul className={classes.grid}>
        {slots.map((slot) => (
          <li key={slot.name}>
            <SlotCard
              slot={slot}
              isChosen={chosen === slot.name}
              isWanted={wanted.includes(slot.name)}
              onChoose={() => dispatch({ kind: 'chose_slot', slot: slot.name })}
            />
            {chosen === slot.name && slot.item !== null && (
              <BigButton look="act" onPress={() => dispatch({ kind: 'took_out', slot: slot.name })}>
                {t('takeOut', { item: slot.item.item })}
              </BigButton>
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}

function keyOf({ product, revision }: { product: string; revision: string }): string {
  return `${product} ${revision}`;
}

function Progress({ slots, product }: { slots: readonly SlotPicture[]; product: string | null }) {
  const t = useTranslations('changeover.progress');
  const needed = slots.filter((slot) => slot.state !== 'free');
  const ready = needed.filter((slot) => slot.state === 'ready').length;
  const total = needed.length;
  const isComplete = ready === total;
  if (total === 0) return null;
  return (
    <div className={classes.progress} role="status">
      <p className={classes.count}>
        {product === null ? t('ofAll', { ready, total }) : t('of', { ready, total, product })}
      </p>
      <div className={classes.bar} data-complete={isComplete} aria-hidden="true">
        <span style={{ width: `${(100 * ready) / total}%` }} />
      </div>
      {isComplete && product !== null && <p className={shop.line}>{t('complete', { product })}</p>}
    </div>
  );
}
