import { IconHandStop, IconHelpHexagon, IconX } from '@tabler/icons-react';
import { useTimeZone, useTranslations } from 'use-intl';
import type { ItemHold } from '@/lib/domain/items/item-record';
import { formatMoment } from '@/lib/ui/format-moment';
import { Trouble } from '@/lib/ui/trouble';
import { useHoldReason } from '@/lib/ui/verdict/use-hold-reason';

/** What speaks against using an item: open holds on it or its lot, that it is retired, that nobody knows what it is. */
export function ItemTroubles({
  holds,
  isRetired = false,
  isReceived = true,
}: {
  holds: readonly ItemHold[];
  isRetired?: boolean;
  isReceived?: boolean;
}) {
  const t = useTranslations('item');
  const tTarget = useTranslations('tags.holdTarget');
  const timeZone = useTimeZone() ?? 'UTC';
  const reasonOf = useHoldReason();
  const open = holds.filter((hold) => hold.releasedAt === null);
  return (
    <>
      {open.map(({ hold, kind, id, reason, at }) => (
        <Trouble key={hold} meaning="caution" shape={IconHandStop} title={t('held')}>
          {t('heldBy', {
            target: `${kind === 'lot' ? tTarget('lot') : tTarget('item')} ${id}`,
            reason: reasonOf(reason),
            time: formatMoment(Date.parse(at), { timeZone, precision: 'minute' }),
          })}
        </Trouble>
      ))}
      {isRetired && (
        <Trouble meaning="stop" shape={IconX} title={t('retired')}>
          {t('retiredText')}
        </Trouble>
      )}
      {!isReceived && (
        <Trouble meaning="caution" shape={IconHelpHexagon} title={t('neverReceived')}>
          {t('neverReceivedText')}
        </Trouble>
      )}
    </>
  );
}
