import { IconHelpHexagon } from '@tabler/icons-react';
import Link from 'next/link';
import type { ReactNode } from 'react';
import { useFormatter, useTranslations } from 'use-intl';
import classes from '@/lib/ui/trace/trace.module.css';

/** Units of one kind as a bar, the possible ones hatched, with their numbers; a press shows only those, another one all again. */
export function BarLink({
  name,
  tag,
  certain,
  possible,
  total,
  isPicked,
  href,
}: {
  name: string;
  tag: ReactNode;
  certain: number;
  possible: number;
  /** Units that a full bar stands for. */
  total: number;
  isPicked: boolean;
  href: string;
}) {
  const t = useTranslations('trace.narrow');
  const { number } = useFormatter();
  const numbers = possible === 0 ? number(certain) : t('both', { certain, possible });
  const widthOf = (count: number) => ({ width: `${total === 0 ? 0 : (100 * count) / total}%` });
  return (
    <Link
      href={href}
      prefetch={false}
      scroll={false}
      className={classes.bar}
      data-picked={isPicked}
      data-empty={certain + possible === 0}
      aria-label={`${t(isPicked ? 'drop' : 'pick', { name })}: ${numbers}`}
    >
      <span>{tag}</span>
      <span className={classes.track}>
        {certain > 0 && <i data-part="certain" style={widthOf(certain)} />}
        {possible > 0 && <i data-part="possible" style={widthOf(possible)} />}
      </span>
      <span className={classes.barCount}>
        <strong>{number(certain)}</strong>
        {possible > 0 && (
          <em>
            {' + '}
            {number(possible)}
            <IconHelpHexagon aria-hidden />
          </em>
        )}
      </span>
    </Link>
  );
}
