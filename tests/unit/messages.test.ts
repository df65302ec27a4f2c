import { createTranslator } from 'use-intl';
import { describe, expect, it } from 'vitest';
import { EVENT_TYPES } from '@/lib/domain/events/catalogue';
import { REFUSAL_CODES } from '@/lib/domain/gate/refusals';
import { en } from '@/lib/ui/messages/en';
import { events } from '@/lib/ui/messages/en/events';
import { refusals } from '@/lib/ui/messages/en/refusals';
import { refusalFacts } from '@/lib/ui/verdict/refusal-facts';

const t = createTranslator({
  locale: 'en',
  messages: en,
  onError(error) {
    throw error;
  },
});

describe('the message catalogue', () => {
  it('has words for every refusal code and for none that does not exist', () => {
    expect(REFUSAL_CODES.length).toBeGreaterThan(30);
    expect(Object.keys(refusals).sort()).toEqual([...REFUSAL_CODES].sort());
  });

  it.each(REFUSAL_CODES)('says %s in a title and a sentence, with facts and without', (code) => {
    const facts = {
      unit: 'U-1',
      station: 'S-1',
      slot: '1-01',
      item: 'R-1',
      expected: ['P-1', 'P-2'],
      part: 'P-3',
      kind: 'unit',
      id: 'U-1',
      reason: 'cracked {parts}',
    };
    for (const refusal of [{ code }, { code, ...facts }]) {
      expect(t(`refusals.${code}.title`).length).toBeGreaterThan(3);
      const text = t(`refusals.${code}.text`, refusalFacts(refusal));
      expect(text).toMatch(/^\S.*\S$/);
      expect(text).not.toMatch(/undefined|null|\[object/);
    }
  });

  it('names every event type', () => {
    expect(EVENT_TYPES.length).toBeGreaterThan(20);
    expect(Object.keys(events).sort()).toEqual(EVENT_TYPES.map((type) => type.replace('.', '_')).sort());
  });

  it('leaves out what a refusal does not know', () => {
    const text = (refusal: Parameters<typeof refusalFacts>[0]) =>
      t(`refusals.${refusal.code}.text`, refusalFacts(refusal));
    expect(text({ code: 'slot_empty', station: 'S', slot: '1' })).toBe('Slot 1 of S has nothing in it.');
    expect(text({ code: 'slot_empty', station: 'S', slot: '1', expected: ['A', 'B'] })).toBe(
      'Slot 1 of S has nothing in it. It needs A, B.',
    );
    expect(text({ code: 'already_shipped', container: 'C', shipment: 'SH' })).toMatch(/^C left with/);
  });
});
