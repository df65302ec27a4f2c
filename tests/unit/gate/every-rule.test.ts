import { describe, expect, it } from 'vitest';
import { EVENT_TYPES } from '@/lib/domain/events/catalogue';
import { judge } from '@/lib/domain/gate/judge';
import { REFUSAL_CODES, type RefusalCode } from '@/lib/domain/gate/refusals';
import { knownOf } from '@/tests/support/known-builder';
import { CONTAINER_CASES } from '@/tests/unit/gate/cases/container-cases';
import { ITEM_CASES } from '@/tests/unit/gate/cases/item-cases';
import { JOINING_AND_HOLD_CASES } from '@/tests/unit/gate/cases/joining-and-hold-cases';
import { LABEL_CASES } from '@/tests/unit/gate/cases/label-cases';
import { LEAVING_CASES } from '@/tests/unit/gate/cases/leaving-cases';
import { MATERIAL_CASES } from '@/tests/unit/gate/cases/material-cases';
import { PERSON_AND_START_CASES } from '@/tests/unit/gate/cases/person-and-start-cases';
import { UNIT_CASES } from '@/tests/unit/gate/cases/unit-cases';

const ROOMS = {
  'person and start': PERSON_AND_START_CASES,
  'a unit': UNIT_CASES,
  material: MATERIAL_CASES,
  'an item': ITEM_CASES,
  'joining and holds': JOINING_AND_HOLD_CASES,
  leaving: LEAVING_CASES,
  containers: CONTAINER_CASES,
  labels: LABEL_CASES,
};

/** Given before the gate is asked, with tests of their own in tests/db/gate-replays.test.ts. */
const GIVEN_ELSEWHERE: readonly RefusalCode[] = [
  'malformed',
  'event_id_reused',
  'time_in_future',
  'device_seq_reused',
  'not_permitted',
  'not_vouched',
];

/** Codes that the gate really gave, and event types that it really let go. */
const given = new Set<string>();
const gone = new Set<string>();

for (const [room, cases] of Object.entries(ROOMS))
  describe(`the gate: ${room}`, () => {
    for (const { rule, given: scene, when, refuses, goes } of cases) {
      it(`no-go ${refuses.code}: ${rule}`, () => {
        const reasons = judge(when, knownOf(scene));
        expect(reasons).toEqual([refuses]);
        for (const { code } of reasons) given.add(code);
      });
      it(`go: ${rule}, but ${goes.because}`, () => {
        const event = goes.when ?? when;
        expect(judge(event, knownOf(goes.given ?? scene))).toEqual([]);
        gone.add(event.type);
      });
    }
  });

describe('the cases above', () => {
  it('make the gate give every code that it can give', () => {
    const wanted = REFUSAL_CODES.filter((code) => !GIVEN_ELSEWHERE.includes(code));
    expect([...given].sort()).toEqual([...wanted].sort());
  });

  it('let every type of event go once', () => {
    expect([...gone].sort()).toEqual([...EVENT_TYPES].sort());
  });
});
