import { noteContact } from '@/lib/offline/contact';

const LIVE = '/api/live';
const AGAIN_MS = 3000;
/** The server says something every ten seconds: silence for longer is no contact. */
const SILENCE_MS = 25_000;

/**
 * Listens to the server while it is there, and finds out when it is and is not; `onChange` is called when the record
 * may have changed. Returns what ends it.
 */
export function listenToServer(onChange: () => void): () => void {
  let source: EventSource | null = null;
  let timer: ReturnType<typeof setTimeout> | undefined;
  const again = (afterMs: number): void => {
    clearTimeout(timer);
    timer = setTimeout(() => {
      source?.close();
      open();
    }, afterMs);
  };
  const heard = (): void => {
    noteContact(true);
    again(SILENCE_MS);
  };
  const open = (): void => {
    source = new EventSource(LIVE);
    source.onopen = heard;
    source.onerror = () => {
      noteContact(false);
      again(AGAIN_MS);
    };
    source.addEventListener('beat', heard);
    source.addEventListener('changed', () => {
      heard();
      onChange();
    });
    again(SILENCE_MS);
  };
  open();
  return () => {
    clearTimeout(timer);
    source?.close();
  };
}
