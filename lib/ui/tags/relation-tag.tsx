'use client';

import { type Icon, IconCircleDashed, IconCircleDot, IconCircleFilled } from '@tabler/icons-react';
import { useTranslations } from 'use-intl';
import type { Relation } from '@/lib/domain/genealogy/answer';
import { Tag } from '@/lib/ui/tags/tag';

const SHAPES: Record<Relation, Icon> = {
  contains: IconCircleFilled,
  formerly: IconCircleDashed,
  touched: IconCircleDot,
};

/** How a unit relates to an item: full circle, left circle, touched circle. */
export function RelationTag({ relation }: { relation: Relation }) {
  const t = useTranslations('tags.relation');
  return (
    <Tag meaning={relation === 'formerly' ? 'quiet' : 'neutral'} shape={SHAPES[relation]}>
      {t(relation)}
    </Tag>
  );
}
