'use client';

import { IconHandStop, IconLockOpen } from '@tabler/icons-react';
import { useTranslations } from 'use-intl';
import { Tag } from '@/lib/ui/tags/tag';

/** Whether a hold still stops its target. */
export function HoldTag({ isOpen }: { isOpen: boolean }) {
  const t = useTranslations('tags.hold');
  return isOpen ? (
    <Tag meaning="caution" shape={IconHandStop}>
      {t('open')}
    </Tag>
  ) : (
    <Tag meaning="quiet" shape={IconLockOpen}>
      {t('released')}
    </Tag>
  );
}
