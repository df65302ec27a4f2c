const ORIGIN = 'http://reelkin.invalid';
// Where nobody is sent after signing in: back to the door, or to an address that is no page.
const NOT_A_PAGE = /^\/(sign-in|setup|api|_next)(\/|$)/;

/** A path of this server to go to after signing in, from whatever an address carried; `/` when it is not one. */
export function safeReturnPath(given: unknown): string {
  if (typeof given !== 'string' || !given.startsWith('/') || !URL.canParse(given, ORIGIN)) return '/';
  const { origin, pathname, search } = new URL(given, ORIGIN);
  // A path such as /.//elsewhere.example becomes //elsewhere.example, which a browser takes for another host.
  const isOurs = origin === ORIGIN && !pathname.startsWith('//') && !NOT_A_PAGE.test(pathname);
  return isOurs ? pathname + search : '/';
}
