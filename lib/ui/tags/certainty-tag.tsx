'use client';

import { IconHelpHexagon, IconSquareCheckFilled } from '@tabler/icons-react';
import { useTranslations } from 'use-intl';
import type { Certainty } from '@/lib/domain/genealogy/answer';
import { Tag } from '@/lib/ui/tags/tag';

/** What the record proves, and what it cannot exclude. */
export function CertaintyTag({ certainty }: { certainty: Certainty }) {
  const t = useTranslations('tags.certainty');
  return certainty === 'certain' ? (
    <Tag meaning="neutral" shape={IconSquareCheckFilled}>
      {t('certain')}
    </Tag>
  ) : (
    <Tag meaning="caution" shape={IconHelpHexagon}>
      {t('possible')}
    </Tag>
  );
}
