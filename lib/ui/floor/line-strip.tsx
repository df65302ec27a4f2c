import dynamic from 'next/dynamic';
import { useTranslations } from 'use-intl';
import type { LinePicture } from '@/lib/domain/floor/floor-picture';
import classes from '@/lib/ui/floor/floor.module.css';
import { StationTile } from '@/lib/ui/floor/station-tile';

// The chart library comes after the tiles, and with this screen only.
const HourStrip = dynamic(() => import('@/lib/ui/floor/hour-strip').then((module) => module.HourStrip), {
  ssr: false,
  loading: () => <div className={classes.hours} />,
});

/** A line: its name, what it makes, its hours, and its stations in the order in which units come to them. */
export function LineStrip({ picture, at }: { picture: LinePicture; at: number }) {
  const t = useTranslations('floor');
  const { line, products, stations, hours, hoursOf } = picture;
  return (
    <section className={classes.line}>
      <header>
        <div>
          <h2>{line === null ? t('noLine') : t('line', { line })}</h2>
          <p>{products.length > 0 ? t('making', { products: products.join(', ') }) : t('notMaking')}</p>
        </div>
        {hoursOf !== null && <HourStrip hours={hours} station={hoursOf} />}
      </header>
      <ol className={classes.tiles}>
        {stations.map((station) => (
          <StationTile key={station.station} picture={station} at={at} />
        ))}
      </ol>
    </section>
  );
}
