import { useTranslations } from 'use-intl';
import type { Change, Standing } from '@/lib/domain/genealogy/difference';
import { CodeText } from '@/lib/ui/code-text';
import classes from '@/lib/ui/difference/difference.module.css';
import table from '@/lib/ui/table.module.css';
import { CertaintyTag } from '@/lib/ui/tags/certainty-tag';
import { ChangeTag, type ShownChange } from '@/lib/ui/tags/change-tag';
import { RelationTag } from '@/lib/ui/tags/relation-tag';

const COLUMNS = ['unit', 'change', 'before', 'after'] as const;

/** Units that one event changed, and how they stood in the answer before and after. */
export function ChangedUnits({ changes }: { changes: readonly Change[] }) {
  const t = useTranslations('difference.units');
  return (
    <table className={`${table.table} ${classes.units}`}>
      <caption>{t('caption', { count: changes.length })}</caption>
      <thead>
        <tr>
          {COLUMNS.map((column) => (
            <th key={column} scope="col">
              {t(column)}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {changes.map((change) => (
          <tr key={change.unit}>
            <th scope="row">
              <CodeText code={change.unit} kind="unit" />
            </th>
            <td>
              <ChangeTag change={shownOf(change)} />
            </td>
            <td data-label={t('before')}>
              <StandingText standing={change.before} />
            </td>
            <td data-label={t('after')}>
              <StandingText standing={change.after} />
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function StandingText({ standing }: { standing: Standing | null }) {
  const t = useTranslations('difference.units');
  if (standing === null) return <span className={classes.out}>{t('out')}</span>;
  return (
    <span className={classes.standing}>
      <CertaintyTag certainty={standing.certainty} /> <RelationTag relation={standing.relation} />
    </span>
  );
}

function shownOf({ kind, after }: Change): ShownChange {
  if (kind !== 'certainty') return kind;
  return after?.certainty ?? 'possible';
}
