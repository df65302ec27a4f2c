'use client';

import { Anchor } from '@mantine/core';
import { IconPlugConnectedX } from '@tabler/icons-react';
import Link from 'next/link';
import { useTimeZone, useTranslations } from 'use-intl';
import type { FloorPicture } from '@/lib/domain/floor/floor-picture';
import classes from '@/lib/ui/floor/floor.module.css';
import { floorUnitsAddress } from '@/lib/ui/floor/floor-units-address';
import { HeldList } from '@/lib/ui/floor/held-list';
import { LineStrip } from '@/lib/ui/floor/line-strip';
import { PlaceNumbers } from '@/lib/ui/floor/place-numbers';
import { StuckList } from '@/lib/ui/floor/stuck-list';
import { useFloorPicture } from '@/lib/ui/floor/use-floor-picture';
import { formatMoment } from '@/lib/ui/format-moment';
import { Screen } from '@/lib/ui/shell/screen';
import { Trouble } from '@/lib/ui/trouble';

/** The whole floor, renewed by itself: what is stuck and what is held first, then what runs. */
export function FloorBoard({
  first,
  site,
  maySeeDevices,
}: {
  first: FloorPicture;
  site: string | null;
  maySeeDevices: boolean;
}) {
  const t = useTranslations('floor');
  const timeZone = useTimeZone() ?? 'UTC';
  const { picture, isStale, isSignedOut } = useFloorPicture(first);
  const time = formatMoment(picture.at, { timeZone, precision: 'second' });
  return (
    <Screen
      title={site === null ? t('title') : t('titleOf', { site })}
      beside={<p className={classes.asOf}>{t('asOf', { time })}</p>}
    >
      <div role="alert">
        {isSignedOut ? (
          <Trouble meaning="caution" shape={IconPlugConnectedX} title={t('signedOut')}>
            <a href="/sign-in?to=%2Ffloor">{t('signIn')}</a>
          </Trouble>
        ) : (
          isStale && (
            <Trouble meaning="caution" shape={IconPlugConnectedX} title={t('stale', { time })}>
              {t('staleText')}
            </Trouble>
          )
        )}
      </div>
      <PlaceNumbers picture={picture} />
      {picture.lines.length + picture.others.length === 0 ? (
        <EmptyPlant />
      ) : (
        <Board picture={picture} maySeeDevices={maySeeDevices} />
      )}
    </Screen>
  );
}

function Board({ picture, maySeeDevices }: { picture: FloorPicture; maySeeDevices: boolean }) {
  const t = useTranslations('floor');
  const tUnits = useTranslations('floorUnits');
  return (
    <div className={classes.board}>
      <div className={classes.lists}>
        {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a list that scrolls must be reached by keyboard */}
        <section tabIndex={0} aria-label={t('stuck.title')}>
          <h2>{t('stuck.title')}</h2>
          <StuckList stuck={picture.stuck} at={picture.at} />
          <p className={classes.listLinks}>
            <Link href={floorUnitsAddress({ place: 'station' })} prefetch={false} className={classes.more}>
              {tUnits('waitingAll')}
            </Link>
            <Link
              href={floorUnitsAddress({ place: 'stock', trouble: 'unsigned' })}
              prefetch={false}
              className={classes.more}
            >
              {tUnits('unsignedAll')}
            </Link>
          </p>
        </section>
        {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a list that scrolls must be reached by keyboard */}
        <section tabIndex={0} aria-label={t('held.title')}>
          <h2>{t('held.title')}</h2>
          <HeldList holds={picture.holds} at={picture.at} />
        </section>
        <section>
          <h2>{t('devices.title')}</h2>
          <p>{t('devices.text', picture.devices)}</p>
          {maySeeDevices && (
            <Link href="/devices" prefetch={false} className={classes.more}>
              {t('devices.all')}
            </Link>
          )}
        </section>
      </div>
      <div className={classes.lines}>
        {picture.lines.map((line) => (
          <LineStrip key={JSON.stringify(line.line)} picture={line} at={picture.at} />
        ))}
        {picture.others.length > 0 && (
          <p className={classes.quiet}>{t('others', { stations: picture.others.join(', ') })}</p>
        )}
      </div>
    </div>
  );
}

function EmptyPlant() {
  const t = useTranslations('floor.empty');
  return (
    <section className={classes.emptyPlant}>
      <h2>{t('title')}</h2>
      <p>{t('text')}</p>
      <Anchor component={Link} href="/plant">
        {t('toPlant')}
      </Anchor>
    </section>
  );
}
