import { resolve } from 'node:path';
import { z } from 'zod';

/** The settings of a server, from environment variables; `.env.example` says what each is for. */
const envSchema = z
  .object({
    HOST: z.string().optional(),
    PORT: z
      .string()
      .regex(/^\d{1,5}$/, 'must be a whole number from 0 to 65535')
      .transform(Number)
      .refine((port) => port <= 65_535, 'must be a whole number from 0 to 65535')
      .default(3000),
    REELKIN_DATA: z.string().optional(),
    REELKIN_LAN: z.enum(['0', '1'], 'must be 1 or 0').default('0'),
    REELKIN_TLS_CERT: z.string().optional(),
    REELKIN_TLS_KEY: z.string().optional(),
    REELKIN_TLS_AUTHORITY: z.string().optional(),
    REELKIN_DEMO: z.enum(['0', '1'], 'must be 1 or 0').default('0'),
    REELKIN_API_TOKEN: z.string().optional(),
    REELKIN_SECRET: z.string().min(32, 'must have at least 32 characters').optional(),
    REELKIN_LOG: z
      .enum(['debug', 'info', 'warn', 'error', 'silent'], 'must be debug, info, warn, error or silent')
      .default('info'),
    DATABASE_URL: z
      .string()
      .regex(/^postgres(ql)?:\/\//, 'must begin with postgresql://')
      .refine(
        (url) => URL.canParse(url.replace('@/', '@localhost/')),
        'is no valid address (special characters of a password must be percent-encoded)',
      )
      // They would replace the connection options by which the application takes on its narrow role.
      .refine((url) => !/[?&]options=/.test(url), 'must not carry options=')
      .optional(),
  })
  .refine((raw) => (raw.REELKIN_TLS_CERT === undefined) === (raw.REELKIN_TLS_KEY === undefined), {
    path: ['REELKIN_TLS_CERT'],
    error: 'and REELKIN_TLS_KEY go together',
  })
  .transform((raw) => ({
    // On a plant's network a server is reached from other devices, else from this computer only.
    host: raw.HOST ?? (raw.REELKIN_LAN === '1' ? '0.0.0.0' : '127.0.0.1'),
    lan: raw.REELKIN_LAN === '1',
    ownTls:
      raw.REELKIN_TLS_CERT === undefined || raw.REELKIN_TLS_KEY === undefined
        ? null
        : { cert: resolve(raw.REELKIN_TLS_CERT), key: resolve(raw.REELKIN_TLS_KEY) },
    tlsAuthority: raw.REELKIN_TLS_AUTHORITY === undefined ? null : resolve(raw.REELKIN_TLS_AUTHORITY),
    port: raw.PORT,
    dataFolder: resolve(raw.REELKIN_DATA ?? (raw.REELKIN_DEMO === '1' ? '.reelkin/demo' : '.reelkin')),
    demo: raw.REELKIN_DEMO === '1',
    apiToken: raw.REELKIN_API_TOKEN ?? null,
    sessionSecret: raw.REELKIN_SECRET ?? null,
    logLevel: raw.REELKIN_LOG,
    databaseUrl: raw.DATABASE_URL ?? null,
  }));

export type Env = z.output<typeof envSchema>;

/**
 * The settings, or one sentence per variable that has a bad value. A variable set to nothing counts as not set.
 * `databaseUrl` is null for the embedded PostgreSQL, `apiToken` null for no bearer access, `sessionSecret` null for
 * one that the server makes itself, `ownTls` null without a certificate of the plant's own, `tlsAuthority` null when
 * nobody is asked to trust one.
 */
export function readEnv(
  variables: Record<string, string | undefined>,
): { ok: true; env: Env } | { ok: false; problems: string[] } {
  const given = Object.fromEntries(
    Object.entries(variables).filter(([, value]) => value !== undefined && value.trim() !== ''),
  );
  const parsed = envSchema.safeParse(given);
  if (parsed.success) return { ok: true, env: parsed.data };
  return {
    ok: false,
    problems: parsed.error.issues.map((issue) => `${issue.path.join('.')} ${issue.message}`),
  };
}
