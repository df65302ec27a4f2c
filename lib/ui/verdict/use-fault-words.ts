import { useTranslations } from 'use-intl';
import type { record } from '@/lib/ui/messages/en/record';

type Fault = keyof typeof record.fault;

/** Every fault with words of its own; the words themselves are too large for a first load. */
const FAULTS: Record<Fault, true> = {
  empty: true,
  invalid_type: true,
  invalid_value: true,
  no_condition: true,
  no_must: true,
  no_station_there: true,
  not_a_number: true,
  not_a_span: true,
  not_a_time: true,
  other: true,
  space_at_end: true,
  too_big: true,
  too_long: true,
  too_small: true,
  unknown_key: true,
  unprintable: true,
  until_before_since: true,
};

/** Gives the words of a fault of something typed, by its code; one without words of its own is just not accepted. */
export function useFaultWords(): (code: string) => string {
  const t = useTranslations('record.fault');
  return (code) => t(isKnown(code) ? code : 'other');
}

function isKnown(code: string): code is Fault {
  return Object.hasOwn(FAULTS, code);
}
