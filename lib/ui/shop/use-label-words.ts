import { useTranslations } from 'use-intl';
import type { ScannedLabel } from '@/lib/domain/station/scanned-label';

/** Says what a scanned label is. */
export function useLabelWords(): (label: ScannedLabel) => string {
  const t = useTranslations('plantLabels');
  return (label) => {
    switch (label.kind) {
      case 'badge':
        return t('badge', { badge: label.badge });
      case 'station':
        return t('station', { station: label.station });
      case 'slot': {
        const { station, slot } = label;
        return t('slot', { slot, station: station ?? '', has_station: station === null ? 'no' : 'yes' });
      }
      default:
        return label satisfies never;
    }
  };
}
