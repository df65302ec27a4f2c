import { IconAlertOctagonFilled, IconHandStop } from '@tabler/icons-react';
import { useTranslations } from 'use-intl';
import type { FloorPicture } from '@/lib/domain/floor/floor-picture';
import { CodeText } from '@/lib/ui/code-text';
import classes from '@/lib/ui/floor/floor.module.css';
import { Tag } from '@/lib/ui/tags/tag';
import { useDuration } from '@/lib/ui/use-duration';

/** Units that do not go on: failed ones first, then those that wait longest. */
export function StuckList({ stuck, at }: { stuck: FloorPicture['stuck']; at: number }) {
  const t = useTranslations('floor.stuck');
  const tTag = useTranslations('tags.hold');
  const duration = useDuration();
  if (stuck.length === 0) return <p>{t('none')}</p>;
  return (
    <table className={classes.table}>
      <thead>
        <tr>
          <th scope="col">{t('unit')}</th>
          <th scope="col">{t('why')}</th>
          <th scope="col">{t('where')}</th>
          <th scope="col">{t('since')}</th>
        </tr>
      </thead>
      <tbody>
        {stuck.map(({ unit, station, openFailure, nextOperation, isHeld, since }) => (
          <tr key={unit}>
            <th scope="row">
              <CodeText code={unit} kind="unit" />
            </th>
            <td className={classes.why}>
              {isHeld && (
                <Tag meaning="caution" shape={IconHandStop}>
                  {tTag('open')}
                </Tag>
              )}
              {openFailure !== null ? (
                <Tag meaning="stop" shape={IconAlertOctagonFilled}>
                  {t('failedAt', { operation: openFailure })}
                </Tag>
              ) : (
                <span>
                  {nextOperation === null ? t('nowhere') : t('waitsFor', { operation: nextOperation })}
                </span>
              )}
            </td>
            <td>{station !== null && <CodeText code={station} />}</td>
            <td>{duration(at - since)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
