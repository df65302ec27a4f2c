import { watchChanges } from '@/lib/server/changes';

const TELL_EVERY_MS = 500;
const BEAT_MS = 10_000;
/** After this a browser asks again, with a session that is checked again. */
const LENGTH_MS = 5 * 60_000;

/** Server-sent events: `changed` whenever the record has changed, at most twice a second, and a beat that it is alive. */
export function liveStream(): ReadableStream<Uint8Array> {
  const encoder = new TextEncoder();
  let end: () => void = () => undefined;
  return new ReadableStream({
    start(controller) {
      const say = (text: string): void => controller.enqueue(encoder.encode(text));
      let telling: NodeJS.Timeout | null = null;
      const stopWatching = watchChanges(() => {
        telling ??= setTimeout(() => {
          telling = null;
          say('event: changed\ndata: -\n\n');
        }, TELL_EVERY_MS);
      });
      const beat = setInterval(() => say('event: beat\ndata: -\n\n'), BEAT_MS);
      const close = setTimeout(() => {
        end();
        controller.close();
      }, LENGTH_MS);
      end = () => {
        stopWatching();
        clearInterval(beat);
        clearTimeout(close);
        if (telling !== null) clearTimeout(telling);
      };
      say('retry: 2000\nevent: changed\ndata: -\n\n');
    },
    cancel: () => end(),
  });
}
