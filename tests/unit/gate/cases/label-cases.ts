import { eventMaker } from '@/tests/support/event-maker';
import type { GateCase } from '@/tests/support/gate-case';

const say = eventMaker();

export const LABEL_CASES: GateCase[] = [
  {
    rule: 'a label that was printed before needs a reason to be printed again',
    given: { labels: ['unit W1'] },
    when: say.labelled('unit', 'W1'),
    refuses: { code: 'reprint_without_reason', kind: 'unit', id: 'W1' },
    goes: { because: 'the reason is given', when: say.labelled('unit', 'W1', { reason: 'smeared' }) },
  },
  {
    rule: 'a badge has labels of its own',
    given: { labels: ['badge W1'] },
    when: say.labelled('badge', 'W1'),
    refuses: { code: 'reprint_without_reason', kind: 'badge', id: 'W1' },
    goes: { because: 'it is the unit of that name', when: say.labelled('unit', 'W1') },
  },
];
