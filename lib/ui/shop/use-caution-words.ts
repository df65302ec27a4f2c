import { useTranslations } from 'use-intl';
import type { UnitCaution } from '@/lib/domain/units/unit-caution';
import { useHoldReason } from '@/lib/ui/verdict/use-hold-reason';

/** Says a caution about a unit in a sentence. */
export function useCautionWords(unit: string): (caution: UnitCaution) => string {
  const t = useTranslations('plantLabels');
  const reasonOf = useHoldReason();
  return (caution) => {
    switch (caution.what) {
      case 'missing_inner':
        return t('missingInner', { product: caution.product, position: caution.position });
      case 'empty_position':
        return t('emptyPosition', { position: caution.position });
      case 'held_inside': {
        const { kind, id, reason } = caution;
        return t('heldInside', { unit, kind, id, reason: reasonOf(reason) });
      }
      default:
        return caution satisfies never;
    }
  };
}
