import { describe, expect, it } from 'vitest';
import { eventSchema } from '@/lib/domain/events/catalogue';
import { doubtUs, isSameContent, subjectUnit, toLogged } from '@/lib/domain/events/logged-event';
import { touchedBy } from '@/lib/domain/events/touched';
import { ACCEPTED_EVENTS } from '@/tests/support/event-samples';

const events = ACCEPTED_EVENTS.map((sample) => eventSchema.parse(sample));

describe('the content of an event', () => {
  it('is its own alone', () => {
    events.forEach((event, index) => {
      events.forEach((other, at) => {
        expect(isSameContent(event, other)).toBe(index === at);
      });
    });
  });

  it('does not change when it is logged', () => {
    for (const event of events) expect(isSameContent(event, toLogged(event))).toBe(true);
  });

  it('says which unit it is about, and how far its time is in doubt', () => {
    for (const event of events) {
      expect(subjectUnit(event)).toBe('unit' in event.body ? 'WX4C0000123' : null);
      expect(doubtUs({ ...event, uncertaintyMs: 1500 })).toBe(1_500_000);
    }
  });

  it('touches its unit, item, container or hold', () => {
    for (const event of events.map(toLogged)) {
      const { units, items, containers, mentioned, holds, joining } = touchedBy(event);
      const unit = subjectUnit(event);
      if (unit !== null) expect(units).toEqual([unit]);
      const count = [units, items, containers, mentioned, holds].flat().length + (joining === null ? 0 : 1);
      const touchesRowsOnly = [
        'item.mounted',
        'item.unmounted',
        'item.spliced',
        'device.retired',
        'label.printed',
        'event.voided',
      ].includes(event.type);
      expect(count > 0, event.type).toBe(!touchesRowsOnly);
    }
  });
});
