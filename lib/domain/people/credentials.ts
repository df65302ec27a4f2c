import { z } from 'zod';
import { codeSchema } from '@/lib/domain/codes';
import { TOKEN_LABEL } from '@/lib/domain/people/principal';

/** Fewest characters of a password. */
const PASSWORD_LENGTH_MIN = 12;
/** Most characters of a password: a bound on the work of hashing it. */
const PASSWORD_LENGTH_MAX = 200;

/** Four to eight digits, for a station where a keyboard is in the way. */
export const pinSchema = z
  .string()
  .refine((pin) => /^[0-9]{4,8}$/.test(pin), {
    error: 'A PIN has four to eight digits.',
    params: { code: 'pin_format' },
  })
  .meta({ description: 'Four to eight digits.' });

/** Any characters; what two keyboards write for one letter is one password (NFKC). */
export const passwordSchema = z
  .string()
  .refine((password) => password.length <= 2 * PASSWORD_LENGTH_MAX, {
    error: `A password has at most ${PASSWORD_LENGTH_MAX} characters.`,
    params: { code: 'password_too_long' },
    abort: true,
  })
  .transform((password) => password.normalize('NFKC'))
  .refine((password) => [...password].length <= PASSWORD_LENGTH_MAX, {
    error: `A password has at most ${PASSWORD_LENGTH_MAX} characters.`,
    params: { code: 'password_too_long' },
  })
  .refine((password) => [...password].length >= PASSWORD_LENGTH_MIN, {
    error: `A password has at least ${PASSWORD_LENGTH_MIN} characters.`,
    params: { code: 'password_too_short' },
  });

/** The badge of a person; `token` is what the log calls the API token. */
export const badgeSchema = codeSchema.refine((badge) => badge !== TOKEN_LABEL, {
  error: 'This badge is taken by the API token.',
  params: { code: 'badge_reserved' },
});
