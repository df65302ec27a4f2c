/** Words of the pages that open without the server. */
export const offline = {
  opening: 'Opening…',
  needsServer: {
    title: 'No server',
    text: 'This screen needs the server, which does not answer. A station goes on without it.',
    again: 'Try again',
    station: 'Go to the station',
  },
  signIn: {
    title: 'Who works here?',
    text: 'The server does not answer. This tablet lets in whoever signed in on it lately.',
  },
} as const;
