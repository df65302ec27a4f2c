'use client';

import { useTimeZone, useTranslations } from 'use-intl';
import type { DeviceList } from '@/lib/domain/devices/device-list';
import type { DeskAction } from '@/lib/ui/desk/desk-action';
import { DeviceRow } from '@/lib/ui/devices/device-row';
import { formatMoment } from '@/lib/ui/format-moment';
import { Section } from '@/lib/ui/section';
import { Screen } from '@/lib/ui/shell/screen';
import table from '@/lib/ui/table.module.css';

const COLUMNS = ['device', 'state', 'owes', 'since', 'lastSeen', 'where', 'doubt', 'actions'] as const;
/** What a tablet has no room for in every language. */
const OPTIONAL: readonly string[] = ['where', 'doubt'];

/** Every device that records: who owes what since when, who was heard of lately, how far its clock can be wrong. */
export function DevicesPage({
  list,
  retire,
  bringBack,
}: {
  list: DeviceList;
  retire: DeskAction | null;
  bringBack: DeskAction | null;
}) {
  const t = useTranslations('devices');
  const timeZone = useTimeZone() ?? 'UTC';
  const { asOf, total, devices } = list;
  const owing = devices.filter((each) => each.retired === null && each.missingCount > 0).length;
  const lost = devices.filter((each) => each.retired !== null).length;
  const time = formatMoment(Date.parse(asOf), { timeZone, precision: 'second' });
  return (
    <Screen title={t('title')} beside={<p>{t('asOf', { time })}</p>}>
      <Section title={t('summary', { owing, lost })} beside={<p>{t('count', { total })}</p>}>
        <p>{t('hint')}</p>
        {total > devices.length && <p>{t('shown', { count: devices.length })}</p>}
        {devices.length > 0 && (
          <table className={table.table}>
            <thead>
              <tr>
                {COLUMNS.map((column) => (
                  <th
                    key={column}
                    scope="col"
                    className={OPTIONAL.includes(column) ? table.optional : undefined}
                  >
                    {t(`columns.${column}`)}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {devices.map((device) => (
                <DeviceRow
                  key={device.device}
                  device={device}
                  asOf={asOf}
                  retire={retire}
                  bringBack={bringBack}
                />
              ))}
            </tbody>
          </table>
        )}
      </Section>
    </Screen>
  );
}
