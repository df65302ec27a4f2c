import type { Metadata } from 'next';
import { pageWords } from '@/app/page-words';
import { allowedActions } from '@/app/unit/allowed-actions';
import { asBuiltQuestionSchema } from '@/lib/domain/genealogy/question';
import { pageCode } from '@/lib/server/http/page-code';
import { readUnitRecord } from '@/lib/server/read-unit-record';
import { requirePrincipal } from '@/lib/server/require-principal';
import { UnitPage } from '@/lib/ui/unit/unit-page';
import { UnknownUnit } from '@/lib/ui/unit/unknown-unit';

type Props = { params: Promise<{ code: string }>; searchParams: Promise<{ at?: unknown }> };

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const t = await pageWords();
  return { title: t('unit.title', { unit: pageCode((await params).code) }) };
}

/** A unit's page: its as-built record and its history, now or as of a moment (`at`, RFC 3339). */
export default async function UnitCodePage({ params, searchParams }: Props) {
  const { code } = await params;
  const unit = pageCode(code);
  const principal = await requirePrincipal('screen:unit', { returnTo: `/unit/${encodeURIComponent(unit)}` });
  const { at } = await searchParams;
  const question = asBuiltQuestionSchema.safeParse({ unit, ...(at !== undefined && { at }) });
  const record = question.success ? await readUnitRecord(question.data.unit, question.data.at) : null;
  if (record === null) return <UnknownUnit unit={unit} isPast={at !== undefined} />;
  return <UnitPage record={record} at={question.data?.at ?? null} actions={allowedActions(principal)} />;
}
