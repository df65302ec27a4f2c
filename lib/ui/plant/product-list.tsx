import { useFormatter, useTranslations } from 'use-intl';
import { ATTEMPTS_DEFAULT, routeOf } from '@/lib/domain/plant/plant';
import type { BomLine, ProductEntry } from '@/lib/domain/plant/plant-file';
import { CodeText } from '@/lib/ui/code-text';
import classes from '@/lib/ui/plant/plant.module.css';
import table from '@/lib/ui/table.module.css';
import { TraceLink } from '@/lib/ui/trace/trace-link';

/** Product revisions, each folded until it is wanted: its serial pattern, its route and its bill of materials. */
export function ProductList({ products }: { products: readonly ProductEntry[] }) {
  const t = useTranslations('plant.products');
  return products.map((product) => {
    const { number, revision, serialPattern, route = [], bom = [] } = product;
    return (
      <details key={JSON.stringify([number, revision])} className={classes.product}>
        <summary>
          <strong>{t('product', { number, revision })}</strong>{' '}
          <span>{t('summary', { steps: route.length, lines: bom.length })}</span>
        </summary>
        {serialPattern !== undefined && (
          <p>
            {t('serial')} <CodeText code={serialPattern} />
          </p>
        )}
        <div className={classes.sides}>
          <RouteTable product={product} />
          <BomTable bom={bom} />
        </div>
      </details>
    );
  });
}

function RouteTable({ product }: { product: ProductEntry }) {
  const t = useTranslations('plant.products');
  const { number } = useFormatter();
  return (
    <table className={table.table}>
      <caption>{t('route')}</caption>
      <thead>
        <tr>
          <th scope="col">{t('step')}</th>
          <th scope="col">{t('operation')}</th>
          <th scope="col">{t('attempts')}</th>
          <th scope="col">{t('sample')}</th>
        </tr>
      </thead>
      <tbody>
        {routeOf(product).map(({ step, operation, attempts = ATTEMPTS_DEFAULT, sample }) => (
          <tr key={step}>
            <td data-label={t('step')}>{step}</td>
            <th scope="row">{operation}</th>
            <td data-label={t('attempts')}>{attempts}</td>
            <td data-label={t('sample')}>
              {sample === undefined
                ? t('every')
                : number(sample, { style: 'percent', maximumFractionDigits: 1 })}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function BomTable({ bom }: { bom: readonly BomLine[] }) {
  const t = useTranslations('plant.products');
  return (
    <table className={table.table}>
      <caption>{t('bom')}</caption>
      <thead>
        <tr>
          <th scope="col">{t('part')}</th>
          <th scope="col">{t('positions')}</th>
          <th scope="col">{t('from')}</th>
        </tr>
      </thead>
      <tbody>
        {bom.map((line) => (
          <tr key={JSON.stringify(line)}>
            <th scope="row">
              {line.part === undefined ? line.product : <TraceLink about="part" code={line.part} />}
            </th>
            <td data-label={t('positions')}>{line.positions?.join(', ')}</td>
            <td data-label={t('from')}>
              {line.station !== undefined
                ? `${line.station} ${line.slot}`
                : t(line.part === undefined ? 'joined' : 'byHand')}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
