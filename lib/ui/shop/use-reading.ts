import { useCallback, useEffect, useRef, useState } from 'react';
import type { z } from 'zod';
import { type ApiAnswer, readApi } from '@/lib/offline/read-api';

/** What a screen read from the server last, and why the newest attempt failed. */
export type Reading<T> = {
  data: T | null;
  trouble: Extract<ApiAnswer<never>, { ok: false }>['why'] | null;
  reload: () => void;
};

/** Reads a path of our API and keeps the last answer; a null path reads nothing. Only the newest attempt counts. */
export function useReading<T extends z.ZodType>(path: string | null, schema: T): Reading<z.output<T>> {
  const [reading, setReading] = useState<{ path: string; answer: ApiAnswer<z.output<T>> } | null>(null);
  const newest = useRef(0);
  const reload = useCallback((): void => {
    if (path === null) return;
    newest.current += 1;
    const own = newest.current;
    void readApi(path, schema).then((answer) => {
      if (own !== newest.current) return;
      setReading((before) =>
        // A screen that shows something goes on showing it when the network is gone for a moment.
        !answer.ok && answer.why === 'unreachable' && before?.path === path && before.answer.ok
          ? before
          : { path, answer },
      );
    });
  }, [path, schema]);
  useEffect(reload, [reload]);
  const answer = reading?.path === path ? reading.answer : null;
  return {
    data: answer?.ok ? answer.data : null,
    trouble: answer === null || answer.ok ? null : answer.why,
    reload,
  };
}
