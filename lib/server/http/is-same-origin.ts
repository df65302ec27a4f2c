const SAFE_METHODS = ['GET', 'HEAD', 'OPTIONS'];

/**
 * Whether a request that a cookie speaks for was made by our own pages, or changes nothing. Browsers say where a
 * request comes from in Sec-Fetch-Site (https and localhost) and in Origin (every unsafe method); a request with
 * neither was not made by a browser, so nobody's cookie was borrowed for it.
 */
export function isSameOrigin(request: Request): boolean {
  if (SAFE_METHODS.includes(request.method)) return true;
  const site = request.headers.get('sec-fetch-site');
  if (site !== null) return site === 'same-origin' || site === 'none';
  const origin = request.headers.get('origin');
  if (origin === null) return true;
  const host = request.headers.get('x-forwarded-host') ?? request.headers.get('host');
  return URL.canParse(origin) && new URL(origin).host === host;
}
