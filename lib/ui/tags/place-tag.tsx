'use client';

import {
  type Icon,
  IconArrowBackUp,
  IconCircleDashed,
  IconPackage,
  IconSquareDot,
  IconStack2,
  IconTruckDelivery,
  IconX,
} from '@tabler/icons-react';
import { useTranslations } from 'use-intl';
import type { Place, PlaceKind } from '@/lib/domain/genealogy/answer';
import { type Meaning, Tag } from '@/lib/ui/tags/tag';

/** Shape and colour of each kind of place; what has left the plant is the loudest, because it is out of reach. */
export const PLACE_LOOKS: Record<PlaceKind, { meaning: Meaning; shape: Icon }> = {
  station: { meaning: 'neutral', shape: IconSquareDot },
  stock: { meaning: 'neutral', shape: IconStack2 },
  container: { meaning: 'neutral', shape: IconPackage },
  shipped: { meaning: 'strong', shape: IconTruckDelivery },
  returned: { meaning: 'caution', shape: IconArrowBackUp },
  scrapped: { meaning: 'quiet', shape: IconX },
};

/** Where a unit is, in one word; null is a unit that nothing has placed yet. */
export function PlaceTag({ place }: { place: Place | PlaceKind }) {
  const t = useTranslations('tags.place');
  const kind = typeof place === 'string' ? place : (place?.kind ?? null);
  if (kind === null)
    return (
      <Tag meaning="quiet" shape={IconCircleDashed}>
        {t('unknown')}
      </Tag>
    );
  return <Tag {...PLACE_LOOKS[kind]}>{t(kind)}</Tag>;
}
