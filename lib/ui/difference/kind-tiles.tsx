import {
  type Icon,
  IconArrowsExchange,
  IconHelpHexagon,
  IconSquareMinus,
  IconSquarePlus,
} from '@tabler/icons-react';
import { useFormatter, useTranslations } from 'use-intl';
import { CHANGE_KINDS, type ChangeKind, type KindCounts } from '@/lib/domain/genealogy/difference';
import classes from '@/lib/ui/difference/difference.module.css';

const SHAPES: Record<ChangeKind, Icon> = {
  joined: IconSquarePlus,
  left: IconSquareMinus,
  certainty: IconHelpHexagon,
  relation: IconArrowsExchange,
};

/** How many units changed in which way, at a glance: what joined is the loudest, since the report lacks it. */
export function KindTiles({ counts }: { counts: KindCounts }) {
  const t = useTranslations('difference.kind');
  const { number } = useFormatter();
  return (
    <ul className={classes.tiles} aria-label={t('label')}>
      {CHANGE_KINDS.map((kind) => {
        const Shape = SHAPES[kind];
        const count = counts[kind];
        return (
          <li key={kind} data-kind={kind} data-empty={count === 0}>
            <span className={classes.name}>
              <Shape aria-hidden />
              {t(kind)}
            </span>{' '}
            <span className={classes.count}>
              <strong>{number(count)}</strong> {t('units', { count })}
            </span>{' '}
            <span>{t(`${kind}Text`)}</span>
          </li>
        );
      })}
    </ul>
  );
}
