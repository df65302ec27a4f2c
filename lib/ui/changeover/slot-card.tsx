'use client';

import { useTranslations } from 'use-intl';
import type { SlotPicture } from '@/lib/domain/station/slot-picture';
import classes from '@/lib/ui/changeover/changeover.module.css';
import shop from '@/lib/ui/shop/shop.module.css';
import { SlotTag } from '@/lib/ui/shop/slot-tag';

/** One slot: its name, what stands there, what belongs there, and whether that agrees. */
export function SlotCard({
  slot,
  isChosen,
  isWanted,
  onChoose,
}: {
  slot: SlotPicture;
  isChosen: boolean;
  /** Whether the item in the hand belongs here. */
  isWanted: boolean;
  onChoose: () => void;
}) {
  const t = useTranslations();
  const { name, holds, item, expected, state } = slot;
  const parts = [...new Set(expected.flatMap((row) => row.parts))];
  const kind = holds === null ? null : t(`tags.itemKind.${holds}`);
  const needs =
    parts.length > 0
      ? t('changeover.slot.needs', { parts: parts.join(', ') })
      : kind !== null && t('changeover.slot.needsAny', { kind });
  return (
    <button
      type="button"
      className={classes.slot}
      data-state={state}
      data-wanted={isWanted}
      aria-pressed={isChosen}
      onClick={onChoose}
    >
      <span className={classes.slotHead}>
        <span className={classes.slotName}>{name}</span>
        <span className={shop.tags}>
          <SlotTag state={state} />
        </span>
      </span>
      {item !== null && (
        <span>
          <strong className={shop.code}>{item.item}</strong>
          {item.part !== null && ` ${item.part}`}
          {item.quantity !== null && (
            <span className={shop.quiet}> · {t('changeover.slot.left', { quantity: item.quantity })}</span>
          )}
        </span>
      )}
      {item !== null && item.oldEnd !== null && (
        <span>{t('changeover.slot.oldEnd', { item: item.oldEnd })}</span>
      )}
      {state !== 'ready' && state !== 'free' && <span>{needs}</span>}
    </button>
  );
}
