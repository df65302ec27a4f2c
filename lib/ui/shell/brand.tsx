'use client';

import { useTranslations } from 'use-intl';
import classes from '@/lib/ui/shell/shell.module.css';

/** Our mark: a reel with its hub and the tape that leaves it, and the name. */
export function Brand() {
  const t = useTranslations('app');
  return (
    <span className={classes.brand}>
      <svg viewBox="0 0 32 32" aria-hidden="true" focusable="false">
        <path
          d="M14 2.5 A11.5 11.5 0 1 0 14 25.5 H30 M14 9 V9.1 M19 14 H19.1 M14 19 V19.1 M9 14 H9.1"
          fill="none"
          stroke="currentColor"
          strokeWidth="3.4"
          strokeLinecap="round"
        />
        <path d="M14 2.5 A11.5 11.5 0 0 1 14 25.5" fill="none" stroke="currentColor" strokeWidth="3.4" />
      </svg>
      <span>{t('name')}</span>
    </span>
  );
}
