'use client';

import { type Icon, IconAlertOctagonFilled, IconHandStop } from '@tabler/icons-react';
import { useFormatter, useTranslations } from 'use-intl';
import type { FloorPicture } from '@/lib/domain/floor/floor-picture';
import { PLACE_KINDS } from '@/lib/domain/genealogy/answer';
import classes from '@/lib/ui/floor/floor.module.css';
import { PLACE_LOOKS } from '@/lib/ui/tags/place-tag';

/** How many units are where, how many wait with an open failure, and how many holds are open. */
export function PlaceNumbers({ picture }: { picture: FloorPicture }) {
  const t = useTranslations('floor');
  const tPlace = useTranslations('tags.place');
  const { number } = useFormatter();
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
            <dd>{number(picture.places[kind])}</dd>
          </div>
        );
      })}
      <Trouble meaning="stop" shape={IconAlertOctagonFilled} count={failed} words={t('failedOpen')} />
      <Trouble meaning="caution" shape={IconHandStop} count={picture.holds.open} words={t('holdsOpen')} />
    </dl>
  );
}

function Trouble({
  meaning,
  shape: Shape,
  count,
  words,
}: {
  meaning: 'stop' | 'caution';
  shape: Icon;
  count: number;
  words: string;
}) {
  const { number } = useFormatter();
  return (
    <div data-loud={count > 0 ? meaning : undefined}>
      <dt>
        <Shape aria-hidden />
        {words}
      </dt>
      <dd>{number(count)}</dd>
    </div>
  );
}
