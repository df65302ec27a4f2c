import { IconHandStop } from '@tabler/icons-react';
import Link from 'next/link';
import { useTranslations } from 'use-intl';
import type { FloorPicture } from '@/lib/domain/floor/floor-picture';
import { CodeText } from '@/lib/ui/code-text';
import classes from '@/lib/ui/floor/floor.module.css';
import { Tag } from '@/lib/ui/tags/tag';
import { useDuration } from '@/lib/ui/use-duration';
import { useHoldReason } from '@/lib/ui/verdict/use-hold-reason';

/** The newest open holds with their reasons, and the way to all of them. */
export function HeldList({ holds, at }: { holds: FloorPicture['holds']; at: number }) {
  const t = useTranslations('floor.held');
  const tTarget = useTranslations('tags.holdTarget');
  const duration = useDuration();
  const reasonOf = useHoldReason();
  if (holds.open === 0) return <p>{t('none')}</p>;
  return (
    <>
      <ul className={classes.held}>
        {holds.newest.map(({ hold, kind, id, reason, at: placedAt }) => (
          <li key={hold}>
            <Tag meaning="caution" shape={IconHandStop}>
              {tTarget(kind)}
            </Tag>
            <CodeText code={id} kind={kind} />
            <span className={classes.reason}>{reasonOf(reason)}</span>
            <span className={classes.quiet}>{t('since', { duration: duration(at - placedAt) })}</span>
          </li>
        ))}
      </ul>
      {holds.open > holds.newest.length && (
        <Link href="/holds" prefetch={false} className={classes.more}>
          {t('more', { count: holds.open })}
        </Link>
      )}
    </>
  );
}
