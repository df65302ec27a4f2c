'use client';

import { Anchor } from '@mantine/core';
import Link from 'next/link';
import { useTranslations } from 'use-intl';
import { Screen } from '@/lib/ui/shell/screen';
import classes from '@/lib/ui/slot-timeline/slot-timeline.module.css';
import { timelineAddress } from '@/lib/ui/slot-timeline/timeline-address';

/** The stations whose slots can be looked at. */
export function TimelineStations({ stations }: { stations: readonly string[] }) {
  const t = useTranslations('slotTimeline');
  return (
    <Screen title={t('title')}>
      <p>{stations.length === 0 ? t('choose.none') : t('choose.text')}</p>
      <ul className={classes.stations} aria-label={t('choose.title')}>
        {stations.map((station) => (
          <li key={station}>
            <Anchor component={Link} href={timelineAddress(station)} prefetch={false}>
              {station}
            </Anchor>
          </li>
        ))}
      </ul>
    </Screen>
  );
}
