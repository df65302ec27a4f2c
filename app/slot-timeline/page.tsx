import { pageTitle, pageWords } from '@/app/page-words';
import { slotTimelineQuestionSchema } from '@/lib/domain/genealogy/slot-timeline';
import { inputErrors } from '@/lib/domain/input-errors';
import { readPlant } from '@/lib/server/read-plant';
import { readSlotTimeline } from '@/lib/server/read-slot-timeline';
import { requirePrincipal } from '@/lib/server/require-principal';
import { Screen } from '@/lib/ui/shell/screen';
import { SlotTimelinePage } from '@/lib/ui/slot-timeline/slot-timeline-page';
import { SPANS_MS } from '@/lib/ui/slot-timeline/timeline-address';
import { TimelineStations } from '@/lib/ui/slot-timeline/timeline-stations';
import { QuestionFaults } from '@/lib/ui/trace/question-faults';
import { UnknownCode } from '@/lib/ui/unknown-code';

type Search = Record<string, string | string[] | undefined>;

export const generateMetadata = pageTitle(({ slotTimeline }) => slotTimeline.title);

/** The slots of a station over a time; without a time the last eight hours, without a station those to choose from. */
export default async function SlotTimelineRoute({ searchParams }: { searchParams: Promise<Search> }) {
  const search = await searchParams;
  const given = Object.entries(search).flatMap(([name, value]) =>
    typeof value === 'string' ? [[name, value] as const] : [],
  );
  await requirePrincipal('screen:trace', {
    returnTo: `/slot-timeline?${new URLSearchParams(given.map((pair) => [...pair]))}`,
  });
  const { station, ...time } = search;
  if (station === undefined) {
    const { stations = [] } = (await readPlant()).file;
    return <TimelineStations stations={stations.filter(({ slots = [] }) => slots.length > 0)} />;
  }
  const question = slotTimelineQuestionSchema.safeParse({
    station,
    ...(Object.keys(time).length > 0 ? time : lastShift()),
  });
  const t = await pageWords();
  if (!question.success)
    return (
      <Screen title={t('slotTimeline.title')}>
        <QuestionFaults faults={inputErrors(question.error)} />
      </Screen>
    );
  const timeline = await readSlotTimeline(question.data);
  if (timeline !== null) return <SlotTimelinePage timeline={timeline} />;
  const { station: code } = question.data;
  return (
    <UnknownCode
      code={code}
      title={t('slotTimeline.unknown.title', { station: code })}
      text={t('slotTimeline.unknown.text')}
      trace={t('slotTimeline.unknown.trace', { station: code })}
    />
  );
}

function lastShift() {
  const now = Date.now();
  return { from: new Date(now - SPANS_MS.shift).toISOString(), to: new Date(now).toISOString() };
}
