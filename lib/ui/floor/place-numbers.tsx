'use client';

import { type Icon, IconAlertOctagonFilled, IconHandStop } from '@tabler/icons-react';
import Link from 'next/link';
import { useFormatter, useTranslations } from 'use-intl';
import type { FloorPicture } from '@/lib/domain/floor/floor-picture';
import { PLACE_KINDS } from '@/lib/domain/genealogy/answer';
import classes from '@/lib/ui/floor/floor.module.css';
import { floorUnitsAddress } from '@/lib/ui/floor/floor-units-address';
import { PLACE_LOOKS } from '@/lib/ui/tags/place-tag';

/** How many units are where, how many wait with an open failure, and how many holds are open. */
export function PlaceNumbers({ picture }: { picture: FloorPicture }) {
  const t = useTranslations('floor');
  const tPlace = useTranslations('tags.place');
  const failed = picture.lines
    .flatMap((line) => line.stations)
    .reduce((sum, station) => sum + station.waiting.failed, 0);
  return (
    <dl className={classes.numbers} aria-label={t('summary')}>
      {PLACE_KINDS.map((kind) => {
        const { shape: Shape } = PLACE_LOOKS[kind];
        return (
          <div key={kind}>
            <dt>
              <Shape aria-hidden />
              {tPlace(kind)}
            </dt>
            <dd>
              <CountLink
                count={picture.places[kind]}
                words={tPlace(kind)}
                href={floorUnitsAddress({ place: kind })}
              />
            </dd>
          </div>
        );
      })}
      <Trouble
        meaning="stop"
        shape={IconAlertOctagonFilled}
        count={failed}
        words={t('failedOpen')}
        href={floorUnitsAddress({ place: 'station', trouble: 'failed' })}
      />
      <Trouble
        meaning="caution"
        shape={IconHandStop}
        count={picture.holds.open}
        words={t('holdsOpen')}
        href="/holds"
      />
    </dl>
  );
}

function Trouble({
  meaning,
  shape: Shape,
  count,
  words,
  href,
}: {
  meaning: 'stop' | 'caution';
  shape: Icon;
  count: number;
  words: string;
  href: string;
}) {
  return (
    <div data-loud={count > 0 ? meaning : undefined}>
      <dt>
        <Shape aria-hidden />
        {words}
      </dt>
      <dd>
        <CountLink count={count} words={words} href={href} />
      </dd>
    </div>
  );
}

/** A count that leads to the list behind it; nothing is behind a zero. */
function CountLink({ count, words, href }: { count: number; words: string; href: string }) {
  const t = useTranslations('floorUnits');
  const { number } = useFormatter();
  if (count === 0) return number(count);
  return (
    <Link
      href={href}
      prefetch={false}
      className={classes.countLink}
      aria-label={t('list', { count, what: words })}
    >
      {number(count)}
    </Link>
  );
}
