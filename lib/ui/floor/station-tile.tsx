import {
  type Icon,
  IconAlertOctagonFilled,
  IconAlertTriangleFilled,
  IconCircleCheckFilled,
  IconHandStop,
  IconPlayerPause,
} from '@tabler/icons-react';
import Link from 'next/link';
import { useTranslations } from 'use-intl';
import type { StationPicture } from '@/lib/domain/floor/floor-picture';
import { formatInstant } from '@/lib/domain/time';
import { CodeText } from '@/lib/ui/code-text';
import classes from '@/lib/ui/floor/floor.module.css';
import { floorUnitsAddress } from '@/lib/ui/floor/floor-units-address';
import { SlotMarks } from '@/lib/ui/floor/slot-marks';
import { timelineAddress } from '@/lib/ui/slot-timeline/timeline-address';
import { Tag } from '@/lib/ui/tags/tag';
import { traceAddress } from '@/lib/ui/trace/trace-address';
import { useDuration } from '@/lib/ui/use-duration';

const HOUR_MS = 3_600_000;

const SHAPES: Record<StationPicture['state'], Icon> = {
  held: IconHandStop,
  missing: IconAlertTriangleFilled,
  running: IconCircleCheckFilled,
  idle: IconPlayerPause,
};

/** A station from four metres: its state in a bar, how much it did in the last hour, and what is wrong there. */
export function StationTile({ picture, at }: { picture: StationPicture; at: number }) {
  const t = useTranslations('floor');
  const tUnits = useTranslations('floorUnits');
  const duration = useDuration();
  const { station, operation, state, lastHour, last, waiting, slots } = picture;
  const Shape = SHAPES[state];
  const done = lastHour.passed + lastHour.failed;
  return (
    <li className={classes.tile} data-state={state}>
      <p className={classes.state}>
        <Shape aria-hidden />
        {t(`state.${state}`)}
      </p>
      <h3>
        {slots.length > 0 ? (
          <Link
            href={timelineAddress(station)}
            prefetch={false}
            className={classes.slotsLink}
            title={t('slotsOverTime')}
          >
            <CodeText code={station} />
          </Link>
        ) : (
          <CodeText code={station} />
        )}
        {operation !== station && <span>{operation}</span>}
      </h3>
      <p className={classes.done}>
        <strong>
          {done === 0 ? (
            done
          ) : (
            <Link
              href={traceAddress({ station, from: formatInstant((at - HOUR_MS) * 1000) })}
              prefetch={false}
              className={classes.tileLink}
              aria-label={tUnits('doneList', { count: done, station })}
            >
              {done}
            </Link>
          )}
        </strong>
        <span>
          {t('lastHour', { passed: done })}
          {done === 0 && (
            <em>{last === null ? t('never') : t('lastAt', { duration: duration(at - last.at) })}</em>
          )}
        </span>
      </p>
      <SlotMarks slots={slots} />
      <div className={classes.troubles}>
        {waiting.failed > 0 && (
          <Link
            href={floorUnitsAddress({ place: 'station', station, trouble: 'failed' })}
            prefetch={false}
            className={classes.tileLink}
          >
            <Tag meaning="stop" shape={IconAlertOctagonFilled}>
              {t('failedHere', { count: waiting.failed })}
            </Tag>
          </Link>
        )}
        {waiting.held > 0 && (
          <Link
            href={floorUnitsAddress({ place: 'station', station, trouble: 'held' })}
            prefetch={false}
            className={classes.tileLink}
          >
            <Tag meaning="caution" shape={IconHandStop}>
              {t('heldHere', { count: waiting.held })}
            </Tag>
          </Link>
        )}
      </div>
      <p className={classes.waiting}>
        {waiting.longestSince === null ? (
          t('noneWaiting')
        ) : (
          <Link
            href={floorUnitsAddress({ place: 'station', station })}
            prefetch={false}
            className={classes.tileLink}
          >
            {t('waiting', { count: waiting.units, duration: duration(at - waiting.longestSince) })}
          </Link>
        )}
      </p>
    </li>
  );
}
