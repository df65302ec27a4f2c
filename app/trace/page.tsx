import { redirect } from 'next/navigation';
import { pageTitle } from '@/app/page-words';
import { beginHolds, endHolds, holdSome } from '@/app/trace/actions';
import { whereUsedQuestionSchema } from '@/lib/domain/genealogy/question';
import { inputErrors } from '@/lib/domain/input-errors';
import { may } from '@/lib/domain/people/permissions';
import { describeSubject } from '@/lib/server/describe-subject';
import { identifyCode } from '@/lib/server/identify-code';
import { readPlant } from '@/lib/server/read-plant';
import { requirePrincipal } from '@/lib/server/require-principal';
import { traceAnswer } from '@/lib/server/trace-answer';
import { isAboutMoment, TooManyUnitsError, UNITS_MAX } from '@/lib/server/where-used';
import { AnswerView } from '@/lib/ui/trace/answer-view';
import { CodeChoice } from '@/lib/ui/trace/code-choice';
import { QuestionFaults } from '@/lib/ui/trace/question-faults';
import { scannedAddress } from '@/lib/ui/trace/scanned-address';
import { TooManyUnits } from '@/lib/ui/trace/too-many-units';
import type { TraceQuestion } from '@/lib/ui/trace/trace-address';
import { TraceScreen } from '@/lib/ui/trace/trace-screen';

export const generateMetadata = pageTitle(({ trace }) => trace.title);

const PAGE_COUNT = 100;
const HOLD_ACTIONS = { begin: beginHolds, hold: holdSome, end: endHolds };

type Search = Record<string, string | string[] | undefined>;

/** One box for anything scanned, and the where-used answer that its address asks for. */
export default async function TracePage({ searchParams }: { searchParams: Promise<Search> }) {
  const { code, ...search } = await searchParams;
  const principal = await requirePrincipal('screen:trace', { returnTo: addressOf({ code, ...search }) });
  if (typeof code === 'string' && code.trim() !== '') return framed({}, await scanned(code.trim()));
  if (Object.keys(search).length === 0) return framed({}, null);
  const parsed = whereUsedQuestionSchema.safeParse(search);
  if (!parsed.success) return framed({}, <QuestionFaults faults={inputErrors(parsed.error)} />);
  const { limit: _, cursor: __, ...question } = parsed.data;
  const asked = { ...question, limit: PAGE_COUNT };
  const answer = await answerOrNull(asked);
  if (answer === null) return framed(question, <TooManyUnits question={question} max={UNITS_MAX} />);
  return framed(
    question,
    <AnswerView
      question={question}
      subject={await describeSubject(asked)}
      answer={answer}
      holdActions={may(principal, 'event:hold.placed') && !isAboutMoment(asked) ? HOLD_ACTIONS : null}
    />,
  );
}

/** The answer, or null where it is about a moment and would need the record of too many units. */
async function answerOrNull(asked: Parameters<typeof traceAnswer>[0]) {
  try {
    return await traceAnswer(asked);
  } catch (error) {
    if (error instanceof TooManyUnitsError) return null;
    throw error;
  }
}

/** One meaning leads to its answer at once; none and several are told. */
async function scanned(code: string) {
  const kinds = await identifyCode(code);
  const [only] = kinds;
  if (only !== undefined && kinds.length === 1) redirect(scannedAddress(only, code));
  return <CodeChoice code={code} kinds={kinds} />;
}

async function framed(question: TraceQuestion, content: React.ReactNode) {
  const { stations = [], operators = [] } = (await readPlant()).file;
  return (
    <TraceScreen
      question={question}
      stations={stations.map((station) => station.code)}
      operators={operators.map(({ badge, name = '' }) => ({ badge, name }))}
    >
      {content}
    </TraceScreen>
  );
}

function addressOf(search: Search): string {
  const parameters = Object.entries(search).flatMap(([name, value]) =>
    typeof value === 'string' ? [[name, value]] : [],
  );
  return parameters.length === 0 ? '/trace' : `/trace?${new URLSearchParams(parameters)}`;
}
