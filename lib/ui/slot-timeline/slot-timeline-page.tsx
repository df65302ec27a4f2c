'use client';

import { Button, Group } from '@mantine/core';
import { IconChevronLeft, IconChevronRight, IconPrinter } from '@tabler/icons-react';
import Link from 'next/link';
import { useState } from 'react';
import { useFormatter, useTimeZone, useTranslations } from 'use-intl';
import type { SlotTimeline } from '@/lib/domain/genealogy/slot-timeline';
import { Facts } from '@/lib/ui/facts';
import { formatMoment } from '@/lib/ui/format-moment';
import { Screen } from '@/lib/ui/shell/screen';
import classes from '@/lib/ui/slot-timeline/slot-timeline.module.css';
import { TimeQuestion } from '@/lib/ui/slot-timeline/time-question';
import {
  SPANS_MS,
  spanAround,
  type TimeSpan,
  timelineAddress,
} from '@/lib/ui/slot-timeline/timeline-address';
import { TimelineLegend } from '@/lib/ui/slot-timeline/timeline-legend';
import { TimelinePicture } from '@/lib/ui/slot-timeline/timeline-picture';
import type { PickedTime } from '@/lib/ui/slot-timeline/use-time-drag';
import { Completeness } from '@/lib/ui/trace/completeness';

/** What stood in the slots of a station during a time, as a picture that can be asked. */
export function SlotTimelinePage({ timeline }: { timeline: SlotTimeline }) {
  const t = useTranslations('slotTimeline');
  const timeZone = useTimeZone() ?? 'UTC';
  const { number } = useFormatter();
  const [picked, setPicked] = useState<PickedTime | null>(null);
  const { station, operation, line, slots, barsLeft, passes } = timeline;
  const span: TimeSpan = { fromMs: Date.parse(timeline.from), toMs: Date.parse(timeline.to) };
  const timeOf = (ms: number) => formatMoment(ms, { timeZone, precision: 'minute' });
  const stays = slots.reduce((sum, { bars }) => sum + bars.length, 0);
  return (
    <Screen title={t('titleOf', { station })}>
      <style>{'@media print{@page{size:A4 landscape}}'}</style>
      <Facts
        facts={[
          [t('facts.time'), t('span', { from: timeOf(span.fromMs), to: timeOf(span.toMs) })],
          [t('facts.operation'), operation],
          [t('facts.line'), line],
          [t('facts.units'), number(passes.count)],
          [t('facts.stays'), number(stays + barsLeft)],
        ]}
      />
      <Completeness facts={timeline} />
      <ZoomLinks station={station} span={span} />
      {barsLeft > 0 && <p>{t('left', { left: barsLeft })}</p>}
      <TimelinePicture
        key={`${station} ${timeline.from} ${timeline.to}`}
        timeline={timeline}
        span={span}
        picked={picked}
        onPicked={setPicked}
      />
      <TimelineLegend />
      <p className={`${classes.quiet} rk-no-print`}>{t('help')}</p>
      <TimeQuestion timeline={timeline} span={span} picked={picked} onPicked={setPicked} />
    </Screen>
  );
}

function ZoomLinks({ station, span }: { station: string; span: TimeSpan }) {
  const t = useTranslations('slotTimeline.zoom');
  const lengthMs = span.toMs - span.fromMs;
  const moved = (share: number) => ({
    fromMs: span.fromMs + Math.round(share * lengthMs),
    toMs: span.toMs + Math.round(share * lengthMs),
  });
  const link = { component: Link, variant: 'default', prefetch: false, scroll: false } as const;
  return (
    <Group className="rk-no-print" gap="xs" role="group" aria-label={t('label')}>
      <Button
        {...link}
        href={timelineAddress(station, moved(-0.5))}
        leftSection={<IconChevronLeft aria-hidden />}
      >
        {t('earlier')}
      </Button>
      <Button
        {...link}
        href={timelineAddress(station, moved(0.5))}
        rightSection={<IconChevronRight aria-hidden />}
      >
        {t('later')}
      </Button>
      {(['shift', 'day', 'week'] as const).map((name) => (
        <Button
          key={name}
          {...link}
          href={timelineAddress(station, spanAround(span, SPANS_MS[name]))}
          aria-current={lengthMs === SPANS_MS[name] ? 'true' : undefined}
          className={classes.zoom ?? ''}
        >
          {t(name)}
        </Button>
      ))}
      <Button variant="default" leftSection={<IconPrinter aria-hidden />} onClick={() => window.print()}>
        {t('print')}
      </Button>
    </Group>
  );
}
