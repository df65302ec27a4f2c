/** Pieces of a text as the body of an answer, each encoded when it is asked for: a long answer leaves room for others. */
export function streamOf(pieces: readonly string[]): ReadableStream<Uint8Array> {
  const encoder = new TextEncoder();
  const rest = pieces.values();
  return new ReadableStream({
    pull(controller) {
      const next = rest.next();
      if (next.done === true) controller.close();
      else controller.enqueue(encoder.encode(next.value));
    },
  });
}
