'use client';

import {
  type Icon,
  IconArrowsExchange,
  IconHelpHexagon,
  IconSquareCheckFilled,
  IconSquareMinus,
  IconSquarePlus,
} from '@tabler/icons-react';
import { useTranslations } from 'use-intl';
import type { ChangeKind } from '@/lib/domain/genealogy/difference';
import { type Meaning, Tag } from '@/lib/ui/tags/tag';

/** What became of a unit of an answer, in one word or two; a change of certainty says which way it went. */
export type ShownChange = Exclude<ChangeKind, 'certainty'> | 'certain' | 'possible';

const LOOKS: Record<ShownChange, { meaning: Meaning; shape: Icon }> = {
  joined: { meaning: 'caution', shape: IconSquarePlus },
  left: { meaning: 'quiet', shape: IconSquareMinus },
  certain: { meaning: 'strong', shape: IconSquareCheckFilled },
  possible: { meaning: 'neutral', shape: IconHelpHexagon },
  relation: { meaning: 'neutral', shape: IconArrowsExchange },
};

/** What became of a unit, as word, shape and colour. */
export function ChangeTag({ change }: { change: ShownChange }) {
  const t = useTranslations('difference.change');
  return <Tag {...LOOKS[change]}>{t(change)}</Tag>;
}
