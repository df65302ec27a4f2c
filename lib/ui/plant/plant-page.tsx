'use client';

import { Anchor } from '@mantine/core';
import { useFormatter, useTranslations } from 'use-intl';
import { orderStations } from '@/lib/domain/floor/order-stations';
import type { PlantFile } from '@/lib/domain/plant/plant-file';
import { Facts } from '@/lib/ui/facts';
import { LinesTable } from '@/lib/ui/plant/lines-table';
import { OperatorsTable } from '@/lib/ui/plant/operators-table';
import { PartsTable } from '@/lib/ui/plant/parts-table';
import { PlantEditor } from '@/lib/ui/plant/plant-editor';
import { ProductList } from '@/lib/ui/plant/product-list';
import { Section } from '@/lib/ui/section';
import { Screen } from '@/lib/ui/shell/screen';

/** What the plant is made of, and for those who may, a new plant file on top of it. */
export function PlantPage({ file, canWrite }: { file: PlantFile; canWrite: boolean }) {
  const t = useTranslations('plant');
  const { site, stations = [], products = [], parts = [], operators = [] } = file;
  const isEmpty = stations.length + products.length + parts.length === 0;
  const name = site?.name ?? site?.code;
  return (
    <Screen
      title={name === undefined ? t('title') : t('titleOf', { site: name })}
      beside={
        <Anchor href="/api/plant" download="plant.json" className="rk-no-print">
          {t('download')}
        </Anchor>
      }
    >
      {isEmpty ? (
        <p>
          {t('empty')} {t(canWrite ? 'emptyAdmin' : 'emptyOthers')}
        </p>
      ) : (
        <PlantFacts file={file} />
      )}
      {canWrite && <PlantEditor isOpen={isEmpty} />}
      {stations.length > 0 && (
        <Section title={t('lines.title')}>
          <LinesTable lines={orderStations(file)} />
        </Section>
      )}
      {products.length > 0 && (
        <Section title={t('products.title')}>
          <ProductList products={products} />
        </Section>
      )}
      {parts.length > 0 && (
        <Section title={t('parts.title')}>
          <PartsTable parts={parts} />
        </Section>
      )}
      {operators.length > 0 && (
        <Section title={t('operators.title')}>
          <OperatorsTable operators={operators} />
        </Section>
      )}
    </Screen>
  );
}

function PlantFacts({ file }: { file: PlantFile }) {
  const t = useTranslations('plant.facts');
  const { number } = useFormatter();
  const { site, stations = [], products = [], parts = [], operators = [] } = file;
  return (
    <Facts
      facts={[
        [t('code'), site?.code],
        [t('timeZone'), site?.timeZone],
        [t('stations'), number(stations.length)],
        [t('products'), number(products.length)],
        [t('parts'), number(parts.length)],
        [t('operators'), number(operators.length)],
      ]}
    />
  );
}
