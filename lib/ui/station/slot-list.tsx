'use client';

import { memo } from 'react';
import { useTranslations } from 'use-intl';
import type { SlotPicture } from '@/lib/domain/station/slot-picture';
import classes from '@/lib/ui/shop/shop.module.css';
import { SlotTag } from '@/lib/ui/shop/slot-tag';

/** The slots of the station and what stands in them; those that are not ready come first. A scan changes none of it. */
export const SlotList = memo(function SlotList({ slots }: { slots: readonly SlotPicture[] }) {
  const t = useTranslations('station.slots');
  const needed = slots.filter((slot) => slot.state !== 'free');
  const ready = needed.filter((slot) => slot.state === 'ready');
  const faulty = needed.filter((slot) => slot.state !== 'ready');
  if (slots.length === 0) return null;
  return (
    <section className={`${classes.card} ${classes.aside}`} aria-label={t('title')}>
      <div className={classes.spread}>
        <h2>{t('title')}</h2>
        <span>{t('count', { ready: ready.length, total: needed.length })}</span>
      </div>
      <ul className={classes.list}>
        {[...faulty, ...ready].map((slot) => (
          <li key={slot.name}>
            <span className={classes.grow}>
              <strong className={classes.code}>{slot.name}</strong> <SlotContents slot={slot} />
            </span>
            <span className={classes.tags}>
              <SlotTag state={slot.state} />
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
});

function SlotContents({ slot }: { slot: SlotPicture }) {
  const t = useTranslations('station.slots');
  const parts = [...new Set(slot.expected.flatMap((row) => row.parts))];
  const needs = parts.length === 0 ? null : t('expects', { parts: parts.join(', ') });
  if (slot.item === null)
    return (
      <>
        {t('nothing')}
        {needs !== null && <span className={classes.quiet}> · {needs}</span>}
      </>
    );
  return (
    <>
      <span className={classes.code}>{slot.item.item}</span>
      {slot.item.part !== null && <span className={classes.quiet}> · {slot.item.part}</span>}
      {slot.state === 'wrong' && needs !== null && <span> · {needs}</span>}
    </>
  );
}
