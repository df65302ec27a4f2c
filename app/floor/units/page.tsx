import { pageTitle, pageWords } from '@/app/page-words';
import { floorUnitsQuestionSchema } from '@/lib/domain/floor/floor-units';
import { inputErrors } from '@/lib/domain/input-errors';
import { readFloorUnits } from '@/lib/server/read-floor-units';
import { requirePrincipal } from '@/lib/server/require-principal';
import { FloorUnitsPage } from '@/lib/ui/floor/floor-units-page';
import { Screen } from '@/lib/ui/shell/screen';
import { QuestionFaults } from '@/lib/ui/trace/question-faults';

export const generateMetadata = pageTitle(({ floorUnits }) => floorUnits.title);

type Search = Record<string, string | string[] | undefined>;

/** The units behind a count of the floor screen. */
export default async function FloorUnitsRoute({ searchParams }: { searchParams: Promise<Search> }) {
  await requirePrincipal('screen:floor', { returnTo: '/floor/units' });
  const question = floorUnitsQuestionSchema.safeParse(await searchParams);
  const t = await pageWords();
  if (!question.success)
    return (
      <Screen title={t('floorUnits.title')}>
        <QuestionFaults faults={inputErrors(question.error)} />
      </Screen>
    );
  return (
    <FloorUnitsPage question={question.data} answer={await readFloorUnits(question.data)} atMs={Date.now()} />
  );
}
