import { useTimeZone, useTranslations } from 'use-intl';
import type { UnitRecord, UnitStay } from '@/lib/domain/units/unit-record';
import { CodeText } from '@/lib/ui/code-text';
import { formatMoment } from '@/lib/ui/format-moment';
import classes from '@/lib/ui/unit/unit.module.css';

/** What a unit is inside of, and what it holds, now and before; stays that ended are quiet. */
export function FamilyTree({ record }: { record: UnitRecord }) {
  const t = useTranslations('unit.family');
  const { parents, children, unit } = record;
  if (parents.length + children.length === 0) return <p>{t('none')}</p>;
  return (
    <ul className={classes.tree}>
      {parents.map((stay) => (
        <Stay key={stay.by} stay={stay} label={t('around')} />
      ))}
      <li data-this="true">
        <small>{t('this')}</small>
        <strong>
          <CodeText code={unit} />
        </strong>
        {children.length > 0 && (
          <ul>
            {children.map((stay) => (
              <Stay key={stay.by} stay={stay} label={t('inside')} />
            ))}
          </ul>
        )}
      </li>
    </ul>
  );
}

function Stay({ stay, label }: { stay: UnitStay; label: string }) {
  const t = useTranslations('unit.family');
  const timeZone = useTimeZone() ?? 'UTC';
  const timeOf = (instant: string) => formatMoment(Date.parse(instant), { timeZone, precision: 'minute' });
  return (
    <li data-ended={stay.until !== null}>
      <small>{label}</small>
      <strong>
        <CodeText code={stay.unit} kind="unit" />
      </strong>{' '}
      {t('position', { position: stay.position })},{' '}
      {stay.until === null
        ? t('since', { time: timeOf(stay.at) })
        : t('until', { from: timeOf(stay.at), until: timeOf(stay.until) })}
    </li>
  );
}
