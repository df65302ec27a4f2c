import { IconHandStop } from '@tabler/icons-react';
import { useTranslations } from 'use-intl';
import type { ExceptionEntry } from '@/lib/domain/exceptions/exception-list';
import { CodeText } from '@/lib/ui/code-text';
import type { DeskAction } from '@/lib/ui/desk/desk-action';
import { DeskButton } from '@/lib/ui/desk/desk-button';
import { eventMessageKey } from '@/lib/ui/events/event-name';
import { Moment } from '@/lib/ui/moment';
import { Tag } from '@/lib/ui/tags/tag';
import { useRefusalWords } from '@/lib/ui/verdict/use-refusal-words';

/** One event that broke a rule: to clear while it is open, to open again once it is cleared. */
export function ExceptionRow({ entry, action }: { entry: ExceptionEntry; action: DeskAction | null }) {
  const t = useTranslations('exceptions');
  const wordsOf = useRefusalWords();
  const tEvents = useTranslations('events');
  const { event, unit, item, station, operator, device, at, recordedAt, flags, cleared } = entry;
  const name = tEvents(eventMessageKey(entry.type));
  const subject = unit ?? item ?? station ?? event;
  const asked = cleared === null ? 'clear' : 'reopen';
  return (
    <tr>
      <th scope="row">
        {(unit !== null || item !== null) && (
          <>
            <CodeText code={subject} kind={unit === null ? 'item' : 'unit'} />
            <br />
          </>
        )}
        {name}
        {unit !== null && (
          <p>
            {entry.isHolding ? (
              <Tag meaning="caution" shape={IconHandStop}>
                {t('holds')}
              </Tag>
            ) : (
              t('released')
            )}
          </p>
        )}
      </th>
      <td data-label={t('columns.broken')}>
        {flags.map((flag) => {
          const { title, text } = wordsOf(flag);
          return (
            <div key={JSON.stringify(flag)}>
              <strong>{title}</strong> {text}
            </div>
          );
        })}
      </td>
      <td data-label={t('columns.where')}>
        {[station, operator, device !== null && t('device', { device })].filter(Boolean).join(' · ')}
      </td>
      <td data-label={t('columns.when')}>
        <Moment at={at} precision="second" />
        <br />
        {t('arrived')} <Moment at={recordedAt} precision="second" />
      </td>
      {cleared !== null && (
        <td data-label={t('columns.cleared')}>
          <Moment at={cleared.at} precision="second" />
          <br />
          {t('clearedBy', { by: cleared.by ?? '', reason: cleared.reason })}
        </td>
      )}
      <td>
        {action !== null && (
          <DeskButton
            isQuiet
            label={t(`${asked}.label`)}
            accessibleLabel={t(`${asked}.labelOf`, { subject, event: name })}
            title={t(`${asked}.title`)}
            text={t(`${asked}.text`)}
            confirm={t(`${asked}.confirm`)}
            hidden={{ event: cleared?.event ?? event }}
            action={action}
          />
        )}
      </td>
    </tr>
  );
}
