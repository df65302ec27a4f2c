import { type AppendResult, appendAnswerSchema } from '@/lib/domain/events/append-answer';
import type { WireEvent } from '@/lib/domain/events/catalogue';
import { noteContact } from '@/lib/offline/contact';
import { pageClock } from '@/lib/offline/page-clock';

const ANSWER_LIMIT_MS = 20_000;

/** What came of sending: results in order, or why there are none. */
export type Posted =
  | { kind: 'answered'; results: AppendResult[] }
  | { kind: 'unreachable' }
  | { kind: 'signed_out' };

/**
 * Sends events once, with the passes of those who did them. Whatever is not a complete answer counts as none: the same
 * events may be sent again.
 */
export async function postEvents(events: readonly WireEvent[], passes: readonly string[]): Promise<Posted> {
  const posted = await post(JSON.stringify({ events, numbers: 'once', passes }), events.length);
  noteContact(posted.kind !== 'unreachable');
  return posted;
}

async function post(body: string, eventCount: number): Promise<Posted> {
  try {
    const response = await pageClock.fetch('/api/events', {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body,
      signal: AbortSignal.timeout(ANSWER_LIMIT_MS),
    });
    if (response.status === 401) return { kind: 'signed_out' };
    if (!response.ok) return { kind: 'unreachable' };
    const answer = appendAnswerSchema.parse(await response.json());
    return answer.results.length === eventCount
      ? { kind: 'answered', results: answer.results }
      : { kind: 'unreachable' };
  } catch {
    return { kind: 'unreachable' };
  }
}
