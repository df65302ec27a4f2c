import { z } from 'zod';
import { refreshReplica } from '@/lib/offline/replica/refresh-replica';

/** What of a worker's world is used here; the types of a page know it by another name. */
declare const self: {
  onmessage: ((message: MessageEvent<unknown>) => void) | null;
  postMessage: (isAnswered: boolean) => void;
};

// A message names a station; the answer is whether the server gave one.
self.onmessage = ({ data }) => {
  void refreshReplica(z.string().parse(data)).then((isAnswered) => self.postMessage(isAnswered));
};
