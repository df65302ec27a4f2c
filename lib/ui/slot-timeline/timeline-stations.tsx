'use client';

import Link from 'next/link';
import { useTranslations } from 'use-intl';
import type { PlantFile } from '@/lib/domain/plant/plant-file';
import { Screen } from '@/lib/ui/shell/screen';
import classes from '@/lib/ui/slot-timeline/slot-timeline.module.css';
import { timelineAddress } from '@/lib/ui/slot-timeline/timeline-address';

type Station = NonNullable<PlantFile['stations']>[number];

/** The stations whose slots can be looked at, line by line in the order of the plant file. */
export function TimelineStations({ stations }: { stations: readonly Station[] }) {
  const t = useTranslations('slotTimeline');
  const lines = [...new Set(stations.map(({ line }) => line))];
  return (
    <Screen title={t('title')}>
      <p>{stations.length === 0 ? t('choose.none') : t('choose.text')}</p>
      {lines.map((line) => (
        <section key={line ?? ''} className={classes.line}>
          <h2>{line === undefined ? t('choose.other') : t('choose.line', { line })}</h2>
          <ul className={classes.stations}>
            {stations
              .filter((station) => station.line === line)
              .map(({ code, operation, slots = [] }) => (
                <li key={code}>
                  <Link href={timelineAddress(code)} prefetch={false}>
                    <strong>{code}</strong>
                    <span>{operation}</span>
                    <span>{t('choose.slots', { count: slots.length })}</span>
                  </Link>
                </li>
              ))}
          </ul>
        </section>
      ))}
    </Screen>
  );
}
