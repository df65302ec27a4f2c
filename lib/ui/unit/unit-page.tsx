'use client';

import { Anchor, Group } from '@mantine/core';
import Link from 'next/link';
import { useTranslations } from 'use-intl';
import type { UnitRecord } from '@/lib/domain/units/unit-record';
import { codeHref } from '@/lib/ui/code-href';
import { CodeText } from '@/lib/ui/code-text';
import { type DeskActions, NO_ACTIONS } from '@/lib/ui/desk/desk-actions';
import { HoldsTable } from '@/lib/ui/desk/holds-table';
import { Timeline } from '@/lib/ui/events/timeline';
import { VoidButton } from '@/lib/ui/events/void-button';
import { Section } from '@/lib/ui/section';
import { Completeness } from '@/lib/ui/trace/completeness';
import { RecordScreen } from '@/lib/ui/trace/record-screen';
import { AsBuiltTable } from '@/lib/ui/unit/as-built-table';
import { FamilyTree } from '@/lib/ui/unit/family-tree';
import { MomentForm } from '@/lib/ui/unit/moment-form';
import { PastBanner } from '@/lib/ui/unit/past-banner';
import { RouteStrip } from '@/lib/ui/unit/route-strip';
import { UnitActions } from '@/lib/ui/unit/unit-actions';
import { UnitFacts } from '@/lib/ui/unit/unit-facts';
import { UnitTroubles } from '@/lib/ui/unit/unit-troubles';

/** A unit's whole life: where it stands, what it is made of, what happened; `at` is null for the record as of now. */
export function UnitPage({
  record,
  at,
  actions,
}: {
  record: UnitRecord;
  at: string | null;
  actions: DeskActions;
}) {
  const t = useTranslations('unit');
  const { unit, standing, draws, holds, history } = record;
  const allowed = at === null ? actions : NO_ACTIONS;
  const items = new Set(draws.map((draw) => draw.item)).size;
  return (
    <RecordScreen
      title={t.rich('titleRich', { unit: () => <CodeText code={unit} /> })}
      beside={<UnitActions unit={unit} isScrapped={standing.isScrapped} actions={allowed} />}
    >
      {at !== null && <PastBanner unit={unit} at={at} />}
      <UnitTroubles record={record} />
      <UnitFacts record={record} />
      <Section title={t('route.title')}>
        <RouteStrip standing={standing} />
      </Section>
      {holds.length > 0 && (
        <Section title={t('holds.title')}>
          <HoldsTable holds={holds} release={allowed.releaseHold} />
        </Section>
      )}
      <Section title={t('built.title')} beside={<BuiltBeside unit={unit} items={items} at={at} />}>
        <Completeness facts={record} />
        <AsBuiltTable draws={draws} />
      </Section>
      <Section title={t('family.title')}>
        <FamilyTree record={record} />
      </Section>
      <Section title={t('history.title')} beside={<p>{t('history.count', { events: history.length })}</p>}>
        <MomentForm unit={unit} at={at} />
        <Timeline
          history={history}
          holds={holds}
          actionOf={(recorded) => <VoidButton recorded={recorded} action={allowed.voidEvent} />}
        />
      </Section>
    </RecordScreen>
  );
}

function BuiltBeside({ unit, items, at }: { unit: string; items: number; at: string | null }) {
  const t = useTranslations('unit.built');
  const href = codeHref('unit', unit);
  return (
    <Group gap="md">
      <p>{t('count', { items })}</p>
      {href !== null && (
        <Anchor
          component={Link}
          href={`${href}/genealogy${at === null ? '' : `?at=${encodeURIComponent(at)}`}`}
          prefetch={false}
          className="rk-no-print"
        >
          {t('picture')}
        </Anchor>
      )}
    </Group>
  );
}
