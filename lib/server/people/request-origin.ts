/** The address that attempts are counted by: the nearest one that a proxy or our own socket has seen. */
export function clientAddress(headers: Headers): string {
  return headers.get('x-forwarded-for')?.split(',').at(-1)?.trim() ?? 'unknown';
}

/** Whether the browser came by https, as a proxy in front of us says. */
export function isSecureRequest(headers: Headers): boolean {
  return headers.get('x-forwarded-proto')?.split(',')[0]?.trim() === 'https';
}
