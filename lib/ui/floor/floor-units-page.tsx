'use client';

import { Anchor } from '@mantine/core';
import { IconAlertOctagonFilled, IconHandStop, IconSignature } from '@tabler/icons-react';
import Link from 'next/link';
import { useTranslations } from 'use-intl';
import {
  FLOOR_UNITS_PAGE,
  type FloorUnit,
  type FloorUnits,
  type FloorUnitsQuestion,
  TROUBLES,
} from '@/lib/domain/floor/floor-units';
import { PLACE_KINDS } from '@/lib/domain/genealogy/answer';
import { CodeText } from '@/lib/ui/code-text';
import classes from '@/lib/ui/floor/floor-units.module.css';
import { floorUnitsAddress } from '@/lib/ui/floor/floor-units-address';
import { PlaceText } from '@/lib/ui/place-text';
import { Screen } from '@/lib/ui/shell/screen';
import table from '@/lib/ui/table.module.css';
import { PlaceTag } from '@/lib/ui/tags/place-tag';
import { Tag } from '@/lib/ui/tags/tag';
import { useDuration } from '@/lib/ui/use-duration';

type Props = { question: FloorUnitsQuestion; answer: FloorUnits; atMs: number };

/** The list behind a count: its place and trouble can be changed, and each unit leads to its record. */
export function FloorUnitsPage({ question, answer, atMs }: Props) {
  const t = useTranslations('floorUnits');
  const tPlace = useTranslations('tags.place');
  const { place, station, trouble, page } = question;
  const pages = Math.max(1, Math.ceil(answer.count / FLOOR_UNITS_PAGE), page);
  return (
    <Screen
      title={t('title')}
      beside={
        <Anchor component={Link} href="/floor" prefetch={false} className="rk-no-print">
          {t('back')}
        </Anchor>
      }
    >
      <div className={classes.choices}>
        <Choices
          label={t('places')}
          choices={PLACE_KINDS.map((kind) => ({
            words: tPlace(kind),
            href: floorUnitsAddress({ place: kind, ...(kind === place && { station }) }),
            isChosen: kind === place,
          }))}
        />
        <Choices
          label={t('troubles')}
          choices={[undefined, ...TROUBLES].map((each) => ({
            words: t(`trouble.${each ?? 'all'}`),
            href: floorUnitsAddress({ place, station, trouble: each }),
            isChosen: each === trouble,
          }))}
        />
      </div>
      <p className={classes.count} role="status">
        <strong>{t('count', { count: answer.count })}</strong>{' '}
        {station !== undefined && (
          <>
            {t('station', { station })}{' '}
            <Anchor component={Link} href={floorUnitsAddress({ place, trouble })} prefetch={false}>
              {t('allStations')}
            </Anchor>
          </>
        )}
      </p>
      {answer.units.length > 0 && <Rows units={answer.units} atMs={atMs} />}
      {pages > 1 && (
        <nav className={classes.pages} aria-label={t('pages', { page, pages })}>
          {page > 1 && (
            <Anchor
              component={Link}
              href={floorUnitsAddress({ ...question, page: page - 1 })}
              prefetch={false}
            >
              {t('previous')}
            </Anchor>
          )}
          <span>{t('pages', { page, pages })}</span>
          {page < pages && (
            <Anchor
              component={Link}
              href={floorUnitsAddress({ ...question, page: page + 1 })}
              prefetch={false}
            >
              {t('next')}
            </Anchor>
          )}
        </nav>
      )}
    </Screen>
  );
}

function Choices({
  label,
  choices,
}: {
  label: string;
  choices: readonly { words: string; href: string; isChosen: boolean }[];
}) {
  return (
    <nav aria-label={label} className={`${classes.row} rk-no-print`}>
      {choices.map(({ words, href, isChosen }) => (
        <Link
          key={href}
          href={href}
          prefetch={false}
          className={classes.choice}
          aria-current={isChosen ? 'true' : undefined}
        >
          {words}
        </Link>
      ))}
    </nav>
  );
}

function Rows({ units, atMs }: { units: readonly FloorUnit[]; atMs: number }) {
  const t = useTranslations('floorUnits');
  const duration = useDuration();
  return (
    <table className={table.table}>
      <thead>
        <tr>
          {(['unit', 'product', 'where', 'why', 'since'] as const).map((column) => (
            <th key={column} scope="col">
              {t(`columns.${column}`)}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {units.map((row) => (
          <tr key={row.unit}>
            <th scope="row">
              <CodeText code={row.unit} kind="unit" />
            </th>
            <td>{row.product !== null && `${row.product} ${row.revision ?? ''}`}</td>
            <td>
              <PlaceTag place={row.place} /> <PlaceText place={row.place} />
            </td>
            <td>
              <Why row={row} />
            </td>
            <td>{row.lastAt !== null && duration(atMs - Date.parse(row.lastAt))}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function Why({ row: { openFailure, nextOperation, isHeld, isUnsigned, place } }: { row: FloorUnit }) {
  const t = useTranslations('floor.stuck');
  const tTag = useTranslations('tags.hold');
  const tUnits = useTranslations('floorUnits');
  return (
    <span className={classes.row}>
      {isHeld && (
        <Tag meaning="caution" shape={IconHandStop}>
          {tTag('open')}
        </Tag>
      )}
      {openFailure !== null && (
        <Tag meaning="stop" shape={IconAlertOctagonFilled}>
          {t('failedAt', { operation: openFailure })}
        </Tag>
      )}
      {isUnsigned && (
        <Tag meaning="caution" shape={IconSignature}>
          {tUnits('unsigned')}
        </Tag>
      )}
      {openFailure === null && nextOperation !== null && place?.kind === 'station' && (
        <span>{t('waitsFor', { operation: nextOperation })}</span>
      )}
    </span>
  );
}
