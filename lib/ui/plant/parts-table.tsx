import { TextInput } from '@mantine/core';
import { useState } from 'react';
import { useFormatter, useTranslations } from 'use-intl';
import type { PlantFile } from '@/lib/domain/plant/plant-file';
import table from '@/lib/ui/table.module.css';
import { TraceLink } from '@/lib/ui/trace/trace-link';

const SHOWN_MAX = 200;

type Part = NonNullable<PlantFile['parts']>[number];

/** The parts, narrowed by what is typed; of very many the first 200. */
export function PartsTable({ parts }: { parts: readonly Part[] }) {
  const t = useTranslations('plant.parts');
  const format = useFormatter();
  const [wanted, setWanted] = useState('');
  const found = parts.filter(({ number, description = '' }) =>
    `${number} ${description}`.toLowerCase().includes(wanted.trim().toLowerCase()),
  );
  const shown = found.slice(0, SHOWN_MAX);
  return (
    <>
      <TextInput
        label={t('find')}
        maw="24rem"
        value={wanted}
        onChange={(event) => setWanted(event.currentTarget.value)}
      />
      <p role="status">{t('count', { shown: shown.length, count: parts.length })}</p>
      <table className={table.table}>
        <thead>
          <tr>
            <th scope="col">{t('number')}</th>
            <th scope="col">{t('description')}</th>
            <th scope="col">{t('floorLife')}</th>
            <th scope="col">{t('attrition')}</th>
          </tr>
        </thead>
        <tbody>
          {shown.map(({ number, description, floorLife, attrition }) => (
            <tr key={number}>
              <th scope="row">
                <TraceLink about="part" code={number} />
              </th>
              <td>{description}</td>
              <td data-label={t('floorLife')}>{floorLife}</td>
              <td data-label={t('attrition')}>
                {attrition !== undefined &&
                  format.number(attrition, { style: 'percent', maximumFractionDigits: 2 })}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
}
