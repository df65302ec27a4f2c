import { pageTitle, pageWords } from '@/app/page-words';
import { beginHolds, endHolds, holdSome } from '@/app/trace/actions';
import { narrowAddressSchema } from '@/lib/domain/genealogy/narrow-question';
import { inputErrors } from '@/lib/domain/input-errors';
import { may } from '@/lib/domain/people/permissions';
import { narrow } from '@/lib/server/narrow';
import { returnPath } from '@/lib/server/people/return-path';
import { readPlant } from '@/lib/server/read-plant';
import { requirePrincipal } from '@/lib/server/require-principal';
import { NarrowView } from '@/lib/ui/narrow/narrow-view';
import { Screen } from '@/lib/ui/shell/screen';
import { QuestionFaults } from '@/lib/ui/trace/question-faults';

export const generateMetadata = pageTitle(({ narrow }) => narrow.title);

const PAGE_COUNT = 100;
const HOLD_ACTIONS = { begin: beginHolds, hold: holdSome, end: endHolds };

type Search = Record<string, string | string[] | undefined>;

/** The smallest set of units that can be defended: the question stands whole in the address. */
export default async function NarrowPage({ searchParams }: { searchParams: Promise<Search> }) {
  const search = await searchParams;
  const person = await requirePrincipal('screen:narrow', { returnTo: returnPath('/trace/narrow', search) });
  const { stations = [], operators = [] } = (await readPlant()).file;
  const choices = {
    stations: stations.map(({ code }) => code),
    operations: [...new Set(stations.map(({ operation }) => operation))],
    operators: operators.map(({ badge, name = '' }) => ({ badge, name })),
  };
  const holdActions = may(person, 'event:hold.placed') ? HOLD_ACTIONS : null;
  if (Object.keys(search).length === 0)
    return <NarrowView answer={null} shown="certain" choices={choices} holdActions={holdActions} />;
  const parsed = narrowAddressSchema.safeParse(search);
  const t = await pageWords();
  if (!parsed.success)
    return (
      <Screen title={t('narrow.title')}>
        <QuestionFaults faults={inputErrors(parsed.error)} />
      </Screen>
    );
  const { conditions, certainty = 'certain' } = parsed.data;
  const answer = await narrow({ conditions, certainty, limit: PAGE_COUNT });
  return <NarrowView answer={answer} shown={certainty} choices={choices} holdActions={holdActions} />;
}
