import { pageTitle, pageWords } from '@/app/page-words';
import { differenceQuestionSchema, whereUsedQuestionSchema } from '@/lib/domain/genealogy/question';
import { inputErrors } from '@/lib/domain/input-errors';
import { answerSince } from '@/lib/server/answer-since';
import { describeSubject } from '@/lib/server/describe-subject';
import { requirePrincipal } from '@/lib/server/require-principal';
import { DifferencePage } from '@/lib/ui/difference/difference-page';
import { QuestionFaults } from '@/lib/ui/trace/question-faults';
import { RecordScreen } from '@/lib/ui/trace/record-screen';

export const generateMetadata = pageTitle(({ difference }) => difference.title);

type Search = Record<string, string | string[] | undefined>;

/** What became of a where-used answer since a moment: the units that changed, and the event that did it. */
export default async function TraceDifferencePage({ searchParams }: { searchParams: Promise<Search> }) {
  const search = await searchParams;
  await requirePrincipal('screen:trace', { returnTo: addressOf(search) });
  const parsed =
    search.since === undefined
      ? whereUsedQuestionSchema.safeParse(search)
      : differenceQuestionSchema.safeParse(search);
  const t = await pageWords();
  if (!parsed.success)
    return (
      <RecordScreen title={t('difference.title')}>
        <QuestionFaults faults={inputErrors(parsed.error)} />
      </RecordScreen>
    );
  const { item, lot, part, station, operator, from, to, at } = parsed.data;
  const question = { item, lot, part, station, operator, from, to, at };
  const asked = 'since' in parsed.data ? parsed.data : null;
  return (
    <DifferencePage
      question={question}
      subject={await describeSubject({ ...question, limit: 1 })}
      since={asked?.since}
      until={asked?.until}
      compared={asked === null ? null : await answerSince(asked)}
    />
  );
}

function addressOf(search: Search): string {
  const parameters = Object.entries(search).flatMap(([name, value]) =>
    typeof value === 'string' ? [[name, value]] : [],
  );
  return `/trace/difference?${new URLSearchParams(parameters)}`;
}
