import { useTranslations } from 'use-intl';
import classes from '@/lib/ui/slot-timeline/slot-timeline.module.css';

/** What a bar and a tick look like, in words beside it. */
export function TimelineLegend() {
  const t = useTranslations('slotTimeline.legend');
  return (
    <ul className={classes.legend} aria-label={t('title')}>
      <li>
        <span className={classes.sample} data-look="certain" />
        {t('certain')}
      </li>
      <li>
        <span className={classes.sample} data-look="possible" />
        {t('possible')}
      </li>
      <li>
        <span className={classes.sample} data-look="certain">
          <b className={classes.tooth} />
        </span>
        {t('splice')}
      </li>
      <li>
        <svg className={classes.passes} aria-hidden="true" width="12" height="20" viewBox="0 0 12 20">
          <path d="M6 4V20" />
        </svg>
        {t('pass')}
      </li>
      <li>
        <svg className={classes.passes} aria-hidden="true" width="12" height="20" viewBox="0 0 12 20">
          <path data-result="fail" d="M6 0V20M3 19H9" />
        </svg>
        {t('fail')}
      </li>
    </ul>
  );
}
