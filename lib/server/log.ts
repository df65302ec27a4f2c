import { type Logger, pino } from 'pino';
import { settings } from '@/lib/server/settings';

let remembered: Logger | null = null;

/** The server's log: one JSON line an entry on standard output. Never give it a body, a secret or a header. */
export function log(): Logger {
  remembered ??= pino({ level: settings().logLevel, base: null });
  return remembered;
}
