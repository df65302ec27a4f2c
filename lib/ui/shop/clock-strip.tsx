'use client';

import { IconClockExclamation } from '@tabler/icons-react';
import { useSyncExternalStore } from 'react';
import { useTranslations } from 'use-intl';
import type { ClockNotice } from '@/lib/domain/clock/clock-notice';
import { pageClock } from '@/lib/offline/page-clock';
import classes from '@/lib/ui/shop/shop.module.css';
import { useDuration } from '@/lib/ui/use-duration';

/** Says what is wrong with this device's clock, and what that does to what is recorded; nothing while it is right. */
export function ClockStrip() {
  const notice = useSyncExternalStore(pageClock.subscribe, pageClock.notice, () => null);
  const words = useClockWords();
  return (
    <div role="status" className={classes.live}>
      {notice !== null && (
        <div className={classes.strip} data-meaning={notice.kind === 'wrong' ? 'info' : 'caution'}>
          <IconClockExclamation aria-hidden />
          <span className={classes.grow}>{words(notice)}</span>
        </div>
      )}
    </div>
  );
}

function useClockWords(): (notice: ClockNotice) => string {
  const t = useTranslations('clock');
  const duration = useDuration();
  const by = (ms: number) => ({ by: duration(Math.abs(ms)), way: ms < 0 ? 'back' : 'forward' });
  const doubtOf = (ms: number) => ({ isWide: ms >= WIDE_MS ? 'yes' : 'no', doubt: duration(ms) });
  return (notice) => {
    switch (notice.kind) {
      case 'no_contact':
        return t('no_contact');
      case 'set':
        return t('set', { ...by(notice.byMs), ...doubtOf(notice.doubtMs) });
      case 'doubtful':
        return t('doubtful', doubtOf(notice.doubtMs));
      case 'wrong':
        return t('wrong', by(notice.byMs));
      default:
        return notice satisfies never;
    }
  };
}

// Beyond a year a number tells nobody more than that nothing is known.
const WIDE_MS = 366 * 24 * 3_600_000;
