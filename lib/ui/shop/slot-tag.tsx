'use client';

import {
  type Icon,
  IconAlertTriangle,
  IconCheck,
  IconCircleDashed,
  IconHandStop,
  IconMinus,
} from '@tabler/icons-react';
import { useTranslations } from 'use-intl';
import type { SlotPicture } from '@/lib/domain/station/slot-picture';
import { type Meaning, Tag } from '@/lib/ui/tags/tag';

const LOOKS: Record<SlotPicture['state'], { meaning: Meaning; shape: Icon }> = {
  ready: { meaning: 'go', shape: IconCheck },
  empty: { meaning: 'caution', shape: IconCircleDashed },
  wrong: { meaning: 'stop', shape: IconAlertTriangle },
  held: { meaning: 'stop', shape: IconHandStop },
  free: { meaning: 'quiet', shape: IconMinus },
};

/** How a slot stands, by word, shape and colour. */
export function SlotTag({ state }: { state: SlotPicture['state'] }) {
  const t = useTranslations('station.slots.state');
  const { meaning, shape } = LOOKS[state];
  return (
    <Tag meaning={meaning} shape={shape}>
      {t(state)}
    </Tag>
  );
}
