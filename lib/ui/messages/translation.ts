import type { en } from '@/lib/ui/messages/en';

type Worded<T> = { readonly [K in keyof T]: T[K] extends string ? string : Worded<T[K]> };

/** A translation: a text for every key of the English ones. */
export type Translation = Worded<typeof en>;
