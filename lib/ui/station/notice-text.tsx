'use client';

import { useTranslations } from 'use-intl';
import type { Notice } from '@/lib/domain/station/session/session';
import { useLabelWords } from '@/lib/ui/shop/use-label-words';

/** Why something that was scanned was not taken. */
export function NoticeText({ notice }: { notice: Notice }) {
  const t = useTranslations('station.notice');
  const wordsOf = useLabelWords();
  const { code, scanned, part, label } = notice;
  if (code === 'is_label') return label === undefined ? null : wordsOf(label);
  return t(code, { scanned, part: part ?? '–' });
}
