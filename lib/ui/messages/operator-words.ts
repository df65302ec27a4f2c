import type { en } from '@/lib/ui/messages/en';

/** What an operator sees; everything else is in English in every language. */
export const OPERATOR_NAMESPACES = [
  'shell',
  'tags',
  'events',
  'refusals',
  'verdict',
  'scanBox',
  'scanning',
  'labels',
  'signIn',
  'notPermitted',
  'time',
  'changeover',
  'clock',
  'counts',
  'holds',
  'items',
  'offline',
  'pack',
  'plantLabels',
  'record',
  'returns',
  'station',
  'trust',
  'wrong',
] as const;
type OperatorNamespace = (typeof OPERATOR_NAMESPACES)[number];

type Worded<T> = { readonly [K in keyof T]: T[K] extends string ? string : Worded<T[K]> };

/** A translation: the same keys as in English. */
export type OperatorWords = { readonly [N in OperatorNamespace]: Worded<(typeof en)[N]> };
