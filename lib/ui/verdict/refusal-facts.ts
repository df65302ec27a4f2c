import type { Refusal } from '@/lib/domain/gate/refusals';

/** Facts that some refusals of a code carry and others do not: messages ask for them by `has_…`. */
const OPTIONAL_FACTS = ['expected', 'part', 'position', 'unit'] as const;

/**
 * The facts of a refusal as texts for its message: lists joined, faults by the words that `faultOf` gives for their
 * codes, and `…` for whatever a message names and the refusal lacks.
 */
export function refusalFacts(
  refusal: Refusal,
  faultOf: (code: string) => string = String,
): Record<string, string> {
  const facts: Record<string, string> = { ...NOTHING_KNOWN };
  for (const [name, value] of Object.entries(refusal))
    if (hasText(value)) facts[name] = textOf(value, faultOf);
  for (const name of OPTIONAL_FACTS) facts[`has_${name}`] = hasText(refusal[name]) ? 'yes' : 'no';
  facts.subject = textOf(refusal.unit ?? refusal.container) || '…';
  return facts;
}

/** Every fact that a message names; the messages themselves are too large for a first load, and a test compares. */
const FACTS = [
  'container',
  'device',
  'deviceSeq',
  'errors',
  'event',
  'expected',
  'from',
  'hold',
  'id',
  'into',
  'item',
  'kind',
  'operation',
  'operator',
  'outer',
  'part',
  'position',
  'product',
  'reason',
  'revision',
  'shipment',
  'slot',
  'station',
  'step',
  'unit',
];
const NOTHING_KNOWN: Record<string, string> = Object.fromEntries(FACTS.map((name) => [name, '…']));

function hasText(fact: unknown): boolean {
  return textOf(fact) !== '';
}

function textOf(fact: unknown, faultOf: (code: string) => string = String): string {
  if (fact === null || fact === undefined) return '';
  if (Array.isArray(fact)) return [...new Set(fact.map((each) => textOf(each, faultOf)))].join(', ');
  if (typeof fact === 'object') return 'code' in fact ? faultOf(String(fact.code)) : '';
  return String(fact);
}
