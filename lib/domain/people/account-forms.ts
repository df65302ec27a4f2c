import { z } from 'zod';
import { statementSchema } from '@/lib/domain/codes';
import { badgeSchema, passwordSchema, pinSchema } from '@/lib/domain/people/credentials';
import { roleSchema } from '@/lib/domain/people/roles';

/** A new person; without a PIN they cannot use a station, without a password no desktop. */
export const newAccountSchema = z
  .strictObject({
    badge: badgeSchema,
    name: statementSchema.optional(),
    role: roleSchema,
    pin: pinSchema.optional(),
    password: passwordSchema.optional(),
  })
  .refine(({ pin, password }) => pin !== undefined || password !== undefined, {
    path: ['pin'],
    error: 'A person needs a PIN, a password or both.',
    params: { code: 'credential_missing' },
  });

/** What changes about a person; what it omits stays. */
export const accountChangeSchema = z.strictObject({
  badge: badgeSchema,
  role: roleSchema.optional(),
  pin: pinSchema.optional(),
  password: passwordSchema.optional(),
  isActive: z.boolean().optional(),
});

/** What the holder of the setup link says about the first administrator. */
export const setupSchema = z.strictObject({
  token: z.string(),
  badge: badgeSchema,
  name: statementSchema,
  pin: pinSchema,
  password: passwordSchema,
});
