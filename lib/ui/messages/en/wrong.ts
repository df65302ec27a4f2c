/** Words of the pages that stand where something went wrong. */
export const wrong = {
  notFound: {
    title: 'There is no such page',
    text: 'The address leads nowhere. If it was printed as a code, scan it in the trace box.',
    start: 'Go to the floor',
    trace: 'Go to trace',
  },
  failed: {
    title: 'Something went wrong here',
    text: 'What was recorded is safe. Try again; if it happens again, tell an administrator this number:',
    noDigest: 'What was recorded is safe. Try again; if it happens again, tell an administrator.',
    again: 'Try again',
    start: 'Go to the floor',
  },
} as const;
