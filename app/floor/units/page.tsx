import type { Metadata } from 'next';
import { floorUnitsQuestionSchema } from '@/lib/domain/floor/floor-units';
import { inputErrors } from '@/lib/domain/input-errors';
import { readFloorUnits } from '@/lib/server/read-floor-units';
import { requirePrincipal } from '@/lib/server/require-principal';
import { FloorUnitsPage } from '@/lib/ui/floor/floor-units-page';
import { en } from '@/lib/ui/messages/en';
import { Screen } from '@/lib/ui/shell/screen';
import { QuestionFaults } from '@/lib/ui/trace/question-faults';

export const metadata: Metadata = { title: en.floorUnits.title };

type Search = Record<string, string | string[] | undefined>;

/** The units behind a count of the floor screen. */
export default async function FloorUnitsRoute({ searchParams }: { searchParams: Promise<Search> }) {
  await requirePrincipal('screen:floor', { returnTo: '/floor/units' });
  const question = floorUnitsQuestionSchema.safeParse(await searchParams);
  if (!question.success)
    return (
      <Screen title={en.floorUnits.title}>
        <QuestionFaults faults={inputErrors(question.error)} />
      </Screen>
    );
  return (
    <FloorUnitsPage question={question.data} answer={await readFloorUnits(question.data)} atMs={Date.now()} />
  );
}
