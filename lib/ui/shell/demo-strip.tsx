'use client';

import { useTranslations } from 'use-intl';
import classes from '@/lib/ui/shell/shell.module.css';

/** Says on every screen, and on every printed page, that the plant is invented. */
export function DemoStrip() {
  const t = useTranslations('shell');
  return (
    <aside aria-label={t('demoLabel')} className={classes.demo}>
      {t('demo')}
    </aside>
  );
}
