import { Fragment } from 'react';
import { useTranslations } from 'use-intl';
import type { UsedUnit } from '@/lib/domain/genealogy/answer';
import { CodeText } from '@/lib/ui/code-text';
import { PlaceText } from '@/lib/ui/place-text';
import table from '@/lib/ui/table.module.css';
import { PlaceTag } from '@/lib/ui/tags/place-tag';
import { RelationTag } from '@/lib/ui/tags/relation-tag';

/** Units of an answer as a table, one row each. */
export function UsedUnitRows({ units }: { units: readonly UsedUnit[] }) {
  const t = useTranslations('trace.units');
  const hasDoubt = units.some(({ because = [] }) => because.length > 0);
  const columns = [
    'unit',
    'product',
    'relation',
    'place',
    'where',
    'through',
    ...(hasDoubt ? (['because'] as const) : []),
  ] as const;
  return (
    <table className={table.table}>
      <thead>
        <tr>
          {columns.map((column) => (
            <th key={column} scope="col">
              {t(column)}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {units.map(({ unit, product, revision, relation, place, through, because }) => (
          <tr key={unit}>
            <th scope="row">
              <CodeText code={unit} kind="unit" />
            </th>
            <td>{product !== null && `${product} ${revision ?? ''}`}</td>
            <td>
              <RelationTag relation={relation} />
            </td>
            <td>
              <PlaceTag place={place} />
            </td>
            <td>
              <PlaceText place={place} />
            </td>
            <td data-label={t('through')}>
              {through.map((inner, depth) => (
                <Fragment key={inner}>
                  {depth > 0 && ' › '}
                  <CodeText code={inner} kind="unit" />
                </Fragment>
              ))}
            </td>
            {hasDoubt && (
              <td data-label={t('because')}>{because?.map((doubt) => t(`doubt.${doubt}`)).join(' ')}</td>
            )}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
