import { useTranslations } from 'use-intl';
import type { SlotTimeline } from '@/lib/domain/genealogy/slot-timeline';
import classes from '@/lib/ui/slot-timeline/slot-timeline.module.css';
import type { TimeSpan } from '@/lib/ui/slot-timeline/timeline-address';

const [WIDTH, HEIGHT] = [1000, 40];

/** The units that came by: a tick each, or how many there were where there are too many. */
export function PassLane({ passes, span }: { passes: SlotTimeline['passes']; span: TimeSpan }) {
  const t = useTranslations('slotTimeline');
  const failed = passes.kind === 'units' ? passes.units.filter(({ result }) => result === 'fail').length : 0;
  return (
    <div className={classes.lane}>
      <span className={classes.slot}>
        <strong>{t('units', { count: passes.count })}</strong>
        <small>
          {passes.kind === 'density' && t('density')}
          {failed > 0 && t('failed', { count: failed })}
        </small>
      </span>
      <svg
        className={classes.passes}
        viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
        preserveAspectRatio="none"
        role="img"
        aria-label={t('unitsText', { count: passes.count })}
      >
        {passes.kind === 'density' ? (
          <path className={classes.density} d={densityPath(passes.counts)} />
        ) : (
          <>
            <path d={ticksPath(passes.units, span, 'pass')} />
            <path data-result="fail" d={ticksPath(passes.units, span, 'fail')} />
          </>
        )}
      </svg>
    </div>
  );
}

type Units = Extract<SlotTimeline['passes'], { kind: 'units' }>['units'];

function ticksPath(units: Units, { fromMs, toMs }: TimeSpan, wanted: 'pass' | 'fail'): string {
  return units
    .flatMap(({ at, result }) => {
      if (result !== wanted) return [];
      const x = ((Date.parse(at) - fromMs) / (toMs - fromMs)) * WIDTH;
      return [wanted === 'pass' ? `M${x} 8V${HEIGHT}` : `M${x} 0V${HEIGHT}M${x - 3} ${HEIGHT - 1}H${x + 3}`];
    })
    .join('');
}

function densityPath(counts: readonly number[]): string {
  const highest = Math.max(1, ...counts);
  const step = WIDTH / counts.length;
  return counts
    .map((count, index) => {
      const height = (count / highest) * HEIGHT;
      return `M${index * step} ${HEIGHT}v${-height}h${step}v${height}z`;
    })
    .join('');
}
