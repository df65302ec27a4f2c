import { useTranslations } from 'use-intl';
import type { PlantPreview } from '@/lib/domain/plant/plant-preview';
import { CodeText } from '@/lib/ui/code-text';
import table from '@/lib/ui/table.module.css';

const SHOWN_MAX = 100;

/** Entries that a plant file would add or change, the first 100 of them. */
export function ChangeList({ changes }: { changes: PlantPreview['changes'] }) {
  const t = useTranslations('plant.editor');
  if (changes.length === 0) return null;
  const more = changes.length - SHOWN_MAX;
  return (
    <>
      <table className={table.table}>
        <tbody>
          {changes.slice(0, SHOWN_MAX).map(({ kind, key, change, fields }) => (
            <tr key={`${kind} ${key}`}>
              <td>{t(`kind.${kind}`)}</td>
              <th scope="row">
                <CodeText code={key} />
              </th>
              <td>{change === 'added' ? t('added') : t('changed', { fields: fields.join(', ') })}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {more > 0 && <p>{t('moreChanges', { count: more })}</p>}
    </>
  );
}
