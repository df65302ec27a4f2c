'use client';

import { useFormatter, useTranslations } from 'use-intl';
import type { ShipmentRecord } from '@/lib/domain/packing/packing-record';
import { CodeText } from '@/lib/ui/code-text';
import { Facts } from '@/lib/ui/facts';
import { NestedContainers } from '@/lib/ui/packing/nested-containers';
import { PackedUnits } from '@/lib/ui/packing/packed-units';
import { Section } from '@/lib/ui/section';
import { RecordScreen } from '@/lib/ui/trace/record-screen';

/** What left with a shipment: to whom, in which containers, which units, and which of them came back. */
export function ShipmentPage({ record }: { record: ShipmentRecord }) {
  const t = useTranslations('packing');
  const { number } = useFormatter();
  const { shipment, customers, containers, units, unitCount, cameBack } = record;
  return (
    <RecordScreen title={t.rich('shipmentRich', { code: () => <CodeText code={shipment} /> })}>
      <Facts
        facts={[
          [t('facts.customer'), customers.join(', ')],
          [t('facts.containers'), number(containers.length)],
          [t('facts.units'), number(unitCount)],
          [t('cameBack'), cameBack.length > 0 && number(cameBack.length)],
        ]}
      />
      <Section title={t('containers.titleShipment')}>
        <NestedContainers containers={containers} />
      </Section>
      {cameBack.length > 0 && (
        <Section title={t('cameBack')}>
          <ul>
            {cameBack.map((unit) => (
              <li key={unit}>
                <CodeText code={unit} kind="unit" />
              </li>
            ))}
          </ul>
        </Section>
      )}
      <Section title={t('units.title')} beside={<p>{t('units.count', { count: unitCount })}</p>}>
        <PackedUnits units={units} count={unitCount} />
      </Section>
    </RecordScreen>
  );
}
