import type { WireEvent } from '@/lib/domain/events/catalogue';

/** The code that an event is about, for a person to recognise it by; empty when it names none. */
export function subjectOf({ body }: WireEvent): string {
  if ('unit' in body) return body.unit;
  if ('item' in body && body.item !== undefined) return body.item;
  if ('container' in body) return body.container;
  return 'target' in body ? body.target.id : '';
}
