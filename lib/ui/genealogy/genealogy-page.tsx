'use client';

import { Anchor } from '@mantine/core';
import dynamic from 'next/dynamic';
import Link from 'next/link';
import { useTranslations } from 'use-intl';
import type { GenealogyAnswer } from '@/lib/domain/genealogy/graph/genealogy-graph';
import { codeHref } from '@/lib/ui/code-href';
import { CodeText } from '@/lib/ui/code-text';
import classes from '@/lib/ui/genealogy/genealogy.module.css';
import { Screen } from '@/lib/ui/shell/screen';
import { Completeness } from '@/lib/ui/trace/completeness';
import { PastBanner } from '@/lib/ui/unit/past-banner';

// What draws comes with this screen only, and after its words.
const GenealogyPicture = dynamic(
  () => import('@/lib/ui/genealogy/genealogy-picture').then((module) => module.GenealogyPicture),
  { ssr: false, loading: () => <div className={classes.frame} /> },
);

/** Where a unit came from and where it went, as a picture, with what the answer cannot know said above it. */
export function GenealogyPage({ answer }: { answer: GenealogyAnswer }) {
  const t = useTranslations('genealogy');
  const { unit, at } = answer;
  const href = codeHref('unit', unit) ?? '/trace';
  return (
    <Screen
      title={t.rich('titleRich', { code: () => <CodeText code={unit} /> })}
      beside={
        <Anchor
          component={Link}
          href={at === null ? href : `${href}?at=${encodeURIComponent(at)}`}
          prefetch={false}
          className="rk-no-print"
        >
          {t('page')}
        </Anchor>
      }
    >
      {at !== null && <PastBanner unit={unit} at={at} />}
      <Completeness facts={answer} />
      <GenealogyPicture answer={answer} />
    </Screen>
  );
}
