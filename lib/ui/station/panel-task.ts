import type { Task } from '@/lib/domain/station/session/session';

/** The task of a panel that shows one step only. */
export type TaskAt<S extends Task['step']> = Extract<Task, { step: S }>;
