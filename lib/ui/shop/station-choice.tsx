'use client';

import { type RefObject, useEffect } from 'react';
import { useTranslations } from 'use-intl';
import { type StationListEntry, stationListSchema } from '@/lib/domain/station/station-picture';
import { BigButton } from '@/lib/ui/shop/big-button';
import classes from '@/lib/ui/shop/shop.module.css';
import { TroublePanel } from '@/lib/ui/shop/trouble-panel';
import { useReading } from '@/lib/ui/shop/use-reading';

/** The plant's stations by line, to press or to scan; `unknown` names one that was kept and is gone. */
export function StationChoice({
  unknown,
  scanTarget,
  onChoose,
}: {
  unknown: string | null;
  /** Where the screen's scan box finds what to do with a scanned label. */
  scanTarget: RefObject<((code: string) => void) | null>;
  onChoose: (code: string) => void;
}) {
  const t = useTranslations('station.choose');
  const { data, trouble, reload } = useReading('/api/stations', stationListSchema);
  useEffect(() => {
    scanTarget.current = (code) => {
      if (data?.stations.some((station) => station.code === code)) onChoose(code);
    };
    return () => {
      scanTarget.current = null;
    };
  }, [data, scanTarget, onChoose]);
  if (data === null) return <TroublePanel trouble={trouble} onRetry={reload} />;
  const { stations } = data;
  return (
    <div className={classes.stack}>
      {unknown !== null && (
        <p className={classes.strip} data-meaning="caution" role="status">
          {t('unknown', { code: unknown })}
        </p>
      )}
      <h2 className={classes.heading}>{t('title')}</h2>
      <p className={classes.quiet}>{stations.length === 0 ? t('none') : t('hint')}</p>
      {[...byLine(stations)].map(([line, members]) => (
        <section key={line ?? ''} className={classes.stack} aria-label={line ?? t('noLine')}>
          <h3 className={classes.heading}>{line ?? t('noLine')}</h3>
          <div className={classes.grid}>
            {members.map(({ code, operation }) => (
              <BigButton key={code} onPress={() => onChoose(code)}>
                {code}
                <br />
                <span className={classes.quiet}>{operation}</span>
              </BigButton>
            ))}
          </div>
        </section>
      ))}
    </div>
  );
}

function byLine(stations: readonly StationListEntry[]): Map<string | null, StationListEntry[]> {
  const lines = new Map<string | null, StationListEntry[]>();
  for (const station of stations) lines.set(station.line, [...(lines.get(station.line) ?? []), station]);
  return lines;
}
