import type { Metadata } from 'next';
import { pageWords } from '@/app/page-words';
import { genealogyQuestionSchema } from '@/lib/domain/genealogy/graph/genealogy-graph';
import { pageCode } from '@/lib/server/http/page-code';
import { readGenealogy } from '@/lib/server/read-genealogy';
import { requirePrincipal } from '@/lib/server/require-principal';
import { GenealogyPage } from '@/lib/ui/genealogy/genealogy-page';
import { UnknownUnit } from '@/lib/ui/unit/unknown-unit';

type Props = { params: Promise<{ code: string }>; searchParams: Promise<{ at?: unknown }> };

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const t = await pageWords();
  return { title: t('genealogy.title', { unit: pageCode((await params).code) }) };
}

/** A unit's genealogy as a picture, now or as of a moment (`at`, RFC 3339). */
export default async function UnitGenealogyPage({ params, searchParams }: Props) {
  const unit = pageCode((await params).code);
  await requirePrincipal('screen:unit', { returnTo: `/unit/${encodeURIComponent(unit)}/genealogy` });
  const { at } = await searchParams;
  const question = genealogyQuestionSchema.safeParse({ unit, ...(at !== undefined && { at }) });
  const answer = question.success ? await readGenealogy(question.data) : null;
  if (answer === null) return <UnknownUnit unit={unit} isPast={at !== undefined} />;
  return <GenealogyPage answer={answer} />;
}
