/** The same connection string with another database, and another user where one is given. */
export function withDatabase(
  url: string,
  database: string,
  login?: { user: string; password: string },
): string {
  const changed = new URL(url);
  changed.pathname = `/${database}`;
  if (login !== undefined) {
    changed.username = login.user;
    changed.password = login.password;
  }
  return changed.href;
}
