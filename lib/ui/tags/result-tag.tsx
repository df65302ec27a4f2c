'use client';

import { IconAlertOctagonFilled, IconCircleCheckFilled } from '@tabler/icons-react';
import { useTranslations } from 'use-intl';
import type { Result } from '@/lib/domain/events/vocabulary';
import { Tag } from '@/lib/ui/tags/tag';

/** Pass or fail of a step or an inspection. */
export function ResultTag({ result }: { result: Result }) {
  const t = useTranslations('tags.result');
  return result === 'pass' ? (
    <Tag meaning="go" shape={IconCircleCheckFilled}>
      {t('pass')}
    </Tag>
  ) : (
    <Tag meaning="stop" shape={IconAlertOctagonFilled}>
      {t('fail')}
    </Tag>
  );
}
