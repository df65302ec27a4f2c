import type { Refusal } from '@/lib/domain/gate/refusals';

/** A server action that records something a person decides, or tells every reason why not. */
export type DeskAction = (form: FormData) => Promise<{ ok: true } | { ok: false; refusals: Refusal[] }>;
