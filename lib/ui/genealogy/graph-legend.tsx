import { memo } from 'react';
import { useTranslations } from 'use-intl';
import classes from '@/lib/ui/genealogy/genealogy.module.css';

const LOOKS = [
  ['contains', { 'data-relation': 'contains' }],
  ['formerly', { 'data-relation': 'formerly' }],
  ['touched', { 'data-relation': 'touched' }],
  ['work', {}],
  ['possible', { 'data-relation': 'contains', 'data-certainty': 'possible' }],
  ['again', { 'data-relation': 'contains', 'data-again': 'true' }],
] as const;

/** What each kind of line means, in words beside it. */
export const GraphLegend = memo(function GraphLegend() {
  const t = useTranslations('genealogy.legend');
  return (
    <ul className={classes.legend} aria-label={t('title')}>
      {LOOKS.map(([name, look]) => (
        <li key={name}>
          <svg className={classes.lines} aria-hidden="true" width="48" height="12" viewBox="0 0 48 12">
            <path d="M0 6H48" {...look} />
          </svg>
          {t(name)}
        </li>
      ))}
    </ul>
  );
});
