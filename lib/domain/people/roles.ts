import { z } from 'zod';

/** What people are here for; a person has exactly one role. */
export const ROLES = ['operator', 'handler', 'qa', 'packer', 'engineer', 'admin'] as const;

/** A role as a form, a row or a document carries it. */
export const roleSchema = z.enum(ROLES);

export type Role = z.infer<typeof roleSchema>;
