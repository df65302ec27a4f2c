'use client';

import { Bar, BarChart, ResponsiveContainer, XAxis, YAxis } from 'recharts';
import { useTimeZone, useTranslations } from 'use-intl';
import type { LinePicture } from '@/lib/domain/floor/floor-picture';
import classes from '@/lib/ui/floor/floor.module.css';
import { formatClock } from '@/lib/ui/format-moment';

const TICK = { fontSize: 14, fill: 'var(--rk-quiet)' };

/** Units an hour as bars: passed from the base up, failed on top of them in red; the numbers are told beside it. */
export function HourStrip({ hours, station }: { hours: LinePicture['hours']; station: string }) {
  const t = useTranslations('floor');
  const timeZone = useTimeZone() ?? 'UTC';
  const passed = hours.reduce((sum, hour) => sum + hour.passed, 0);
  const failed = hours.reduce((sum, hour) => sum + hour.failed, 0);
  const best = Math.max(0, ...hours.map((hour) => hour.passed));
  const highest = Math.max(1, ...hours.map((hour) => hour.passed + hour.failed));
  return (
    <figure className={classes.hours}>
      <figcaption>
        {t('perHour', { station })}
        <span className={classes.unseen}>{t('perHourText', { passed, failed, station, best })}</span>
      </figcaption>
      <div aria-hidden="true" className={classes.chart}>
        <ResponsiveContainer width="100%" height="100%">
          <BarChart
            data={hours}
            accessibilityLayer={false}
            margin={{ top: 10, right: 0, bottom: 0, left: 0 }}
            barCategoryGap={1}
          >
            <XAxis
              dataKey="at"
              interval={11}
              tickLine={false}
              axisLine={{ stroke: 'var(--rk-line-strong)' }}
              tick={TICK}
              height={20}
              tickFormatter={(at: number) => formatClock(at, timeZone)}
            />
            <YAxis
              width={32}
              tickLine={false}
              axisLine={false}
              tick={TICK}
              domain={[0, highest]}
              ticks={[0, highest]}
            />
            <Bar dataKey="passed" stackId="units" fill="var(--rk-quiet)" isAnimationActive={false} />
            <Bar dataKey="failed" stackId="units" fill="var(--rk-stop-solid)" isAnimationActive={false} />
          </BarChart>
        </ResponsiveContainer>
      </div>
    </figure>
  );
}
