import { IconAlertTriangle, IconCircleCheck, IconClockPause, IconDeviceTabletOff } from '@tabler/icons-react';
import { useTranslations } from 'use-intl';
import type { DeviceEntry } from '@/lib/domain/devices/device-list';
import { CodeText } from '@/lib/ui/code-text';
import type { DeskAction } from '@/lib/ui/desk/desk-action';
import { DeskButton } from '@/lib/ui/desk/desk-button';
import { Moment } from '@/lib/ui/moment';
import { numberRanges } from '@/lib/ui/number-ranges';
import table from '@/lib/ui/table.module.css';
import { Tag } from '@/lib/ui/tags/tag';
import { useDuration } from '@/lib/ui/use-duration';

// Longer than a shift without a word.
const QUIET_MS = 12 * 3_600_000;
// Beyond a day a doubt means that nothing is known.
const UNKNOWN_MS = 24 * 3_600_000;

type State = 'owing' | 'lost' | 'quiet' | 'recent';

const LOOKS = {
  owing: { meaning: 'caution', shape: IconAlertTriangle },
  lost: { meaning: 'stop', shape: IconDeviceTabletOff },
  quiet: { meaning: 'quiet', shape: IconClockPause },
  recent: { meaning: 'go', shape: IconCircleCheck },
} as const;

/** One device, with its retirement, and the way back when it was not lost after all. */
export function DeviceRow({
  device: entry,
  asOf,
  retire,
  bringBack,
}: {
  device: DeviceEntry;
  asOf: string;
  retire: DeskAction | null;
  bringBack: DeskAction | null;
}) {
  const t = useTranslations('devices');
  const duration = useDuration();
  const { device, highest, missing, missingCount, missingSince, lastSeenAt, last, retired } = entry;
  const state = stateOf(entry, asOf);
  const doubtMs = last?.uncertaintyMs ?? 0;
  return (
    <tr>
      <th scope="row">
        <CodeText code={device} />
      </th>
      <td data-label={t('columns.state')}>
        <Tag {...LOOKS[state]}>{t(`state.${state}`)}</Tag>
      </td>
      <td data-label={t('columns.owes')}>
        {missingCount > 0 &&
          t('missing', { count: missingCount, numbers: numberRanges(missing.slice(0, 20)) })}
        {retired !== null && ` ${t('after', { highest: String(highest) })}`}
        {retired === null && missingCount === 0 && t('nothing', { highest: String(highest) })}
      </td>
      <td data-label={t('columns.since')}>
        {retired === null ? (
          missingSince !== null && <Moment at={missingSince} />
        ) : (
          <>
            <Moment at={retired.at} />
            <br />
            {retired.reason}
            {retired.hasSpokenSince && (
              <>
                <br />
                <strong>{t('spoken')}</strong>
              </>
            )}
          </>
        )}
      </td>
      <td data-label={t('columns.lastSeen')}>
        {lastSeenAt === null ? t('never') : <Moment at={lastSeenAt} precision="second" />}
      </td>
      <td className={table.optional} data-label={t('columns.where')}>
        {[last?.station, last?.operator].filter((each) => each !== null && each !== undefined).join(' · ')}
      </td>
      <td className={table.optional} data-label={t('columns.doubt')}>
        {last !== null &&
          (doubtMs >= UNKNOWN_MS
            ? t('doubtUnknown')
            : doubtMs < 1000
              ? t('doubtSmall')
              : t('doubt', { doubt: duration(doubtMs) }))}
      </td>
      <td>
        {retired === null && retire !== null && (
          <DeskButton
            isQuiet
            label={t('retire.label')}
            accessibleLabel={t('retire.labelOf', { device })}
            title={t('retire.title', { device })}
            text={t('retire.text')}
            confirm={t('retire.confirm')}
            isGrave
            hidden={{ device }}
            action={retire}
          />
        )}
        {retired !== null && bringBack !== null && (
          <DeskButton
            isQuiet
            label={t('bringBack.label')}
            accessibleLabel={t('bringBack.labelOf', { device })}
            title={t('bringBack.title', { device })}
            text={t('bringBack.text')}
            confirm={t('bringBack.confirm')}
            hidden={{ event: retired.event }}
            action={bringBack}
          />
        )}
      </td>
    </tr>
  );
}

function stateOf({ retired, missingCount, lastSeenAt }: DeviceEntry, asOf: string): State {
  if (retired !== null) return 'lost';
  if (missingCount > 0) return 'owing';
  return lastSeenAt !== null && Date.parse(asOf) - Date.parse(lastSeenAt) < QUIET_MS ? 'recent' : 'quiet';
}
