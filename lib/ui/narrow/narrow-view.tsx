'use client';

import { Button, Group } from '@mantine/core';
import { IconFileTypeCsv, IconHelpHexagon, IconPrinter, IconSquareCheckFilled } from '@tabler/icons-react';
import Link from 'next/link';
import { useFormatter, useTranslations } from 'use-intl';
import { CERTAINTIES, type Certainty } from '@/lib/domain/genealogy/answer';
import type { NarrowAnswer } from '@/lib/domain/genealogy/narrow-answer';
import type { Condition } from '@/lib/domain/genealogy/narrow-question';
import { HoldUnitsButton } from '@/lib/ui/hold-units/hold-units-button';
import type { HoldActions } from '@/lib/ui/hold-units/use-hold-batch';
import { AddCondition, type NarrowChoices } from '@/lib/ui/narrow/add-condition';
import { ConditionList } from '@/lib/ui/narrow/condition-list';
import { fetchNarrowed } from '@/lib/ui/narrow/fetch-narrowed';
import { narrowAddress, narrowQuery } from '@/lib/ui/narrow/narrow-address';
import { NarrowedPlaces } from '@/lib/ui/narrow/narrowed-places';
import { NarrowedUnits } from '@/lib/ui/narrow/narrowed-units';
import { Section } from '@/lib/ui/section';
import { Screen } from '@/lib/ui/shell/screen';
import { Completeness } from '@/lib/ui/trace/completeness';
import trace from '@/lib/ui/trace/trace.module.css';

const SHAPES = { certain: IconSquareCheckFilled, possible: IconHelpHexagon };

/** How many units are left and how complete that is, what each condition does, where the units are, and which they are. */
export function NarrowView({
  answer,
  shown,
  choices,
  holdActions,
}: {
  /** Null before there is a condition. */
  answer: NarrowAnswer | null;
  shown: Certainty;
  choices: NarrowChoices;
  /** Null for those who may not place holds. */
  holdActions: HoldActions | null;
}) {
  const t = useTranslations('narrow');
  const conditions = answer?.conditions.map(({ condition }) => condition) ?? [];
  return (
    <Screen title={t('title')}>
      <Section
        title={t('question')}
        beside={
          answer !== null && <Actions answer={answer} conditions={conditions} holdActions={holdActions} />
        }
      >
        {answer === null ? (
          <p>{t('none')}</p>
        ) : (
          <>
            <Groups answer={answer} conditions={conditions} shown={shown} />
            <Completeness facts={answer} />
            <ConditionList rows={answer.conditions} />
            <NarrowedPlaces counts={answer.counts} conditions={conditions} />
          </>
        )}
      </Section>
      <div className="rk-no-print">
        <Section title={t('add.title')}>
          <AddCondition key={conditions.length} conditions={conditions} choices={choices} />
        </Section>
      </div>
      {answer !== null && (
        <Section title={t(`units.title.${shown}`)}>
          <NarrowedUnits
            key={JSON.stringify([answer.asOf, conditions, shown])}
            first={answer.units}
            next={answer.next}
            count={answer.counts[shown].units}
            conditions={conditions}
            certainty={shown}
          />
        </Section>
      )}
    </Screen>
  );
}

function Groups({
  answer,
  conditions,
  shown,
}: {
  answer: NarrowAnswer;
  conditions: readonly Condition[];
  shown: Certainty;
}) {
  const t = useTranslations('narrow.group');
  const tGroup = useTranslations('trace.group');
  const { number } = useFormatter();
  return (
    <nav className={trace.groups} aria-label={t('label')}>
      {CERTAINTIES.map((group) => {
        const Shape = SHAPES[group];
        const { units, held } = answer.counts[group];
        return (
          <Link
            key={group}
            href={narrowAddress(conditions, group)}
            prefetch={false}
            scroll={false}
            data-group={group}
            data-empty={units === 0}
            aria-current={shown === group ? 'true' : undefined}
          >
            <span className={trace.groupName}>
              <Shape aria-hidden />
              {tGroup(group)}
            </span>
            <span className={trace.groupCount}>
              <strong>{number(units)}</strong> {tGroup('units', { count: units })},{' '}
              {t('held', { count: held })}
            </span>
            <span>{t(group)}</span>
          </Link>
        );
      })}
    </nav>
  );
}

function Actions({
  answer: { counts, complete },
  conditions,
  holdActions,
}: {
  answer: NarrowAnswer;
  conditions: readonly Condition[];
  holdActions: HoldActions | null;
}) {
  const t = useTranslations('trace');
  return (
    <Group className="rk-no-print" gap="xs">
      {holdActions !== null && (
        <HoldUnitsButton
          actions={holdActions}
          answer={{
            counts: { certain: counts.certain.units, possible: counts.possible.units },
            isComplete: complete,
            readPage: (page) => fetchNarrowed({ conditions, ...page }),
          }}
        />
      )}
      <Button
        component="a"
        href={`/api/trace/narrow.csv?${narrowQuery(conditions)}`}
        download
        variant="default"
        leftSection={<IconFileTypeCsv aria-hidden />}
      >
        {t('csv')}
      </Button>
      <Button variant="default" leftSection={<IconPrinter aria-hidden />} onClick={() => window.print()}>
        {t('print')}
      </Button>
    </Group>
  );
}
