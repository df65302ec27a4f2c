import type { WireEvent } from '@/lib/domain/events/catalogue';
import type { Principal } from '@/lib/domain/people/principal';
import { appendEvents, type EventResult } from '@/lib/server/append-events';
import { checkUnit } from '@/lib/server/check-unit';
import { database } from '@/lib/server/database';
import { putPlant } from '@/lib/server/put-plant';
import { type EventMaker, eventMaker } from '@/tests/support/event-maker';

const TOKEN: Principal = { kind: 'token' };

let floorCount = 0;

/**
 * A line of its own in the plant: printer with a stencil, placer with two reel slots of which WX4 draws from F1, two
 * test benches with two attempts, a bench off the route; everything is ready to run. Codes end in the floor's number,
 * so the tests of a file share a database and nothing else.
 */
export async function openFloor() {
  floorCount += 1;
  const name = (code: string) => `${code}-${floorCount}`;
  const say = eventMaker();
  const codes = {
    print: name('PRINT'),
    place: name('PLACE'),
    test: name('TEST'),
    test2: name('TEST2'),
    rework: name('REWORK'),
    product: name('WX4'),
    inner: name('PSU2'),
    reel: name('R'),
    lot: name('LOT'),
    stencil: name('S'),
    printer: name('op-print'),
    tester: name('op-test'),
  };
  await putPlant(plantOf(codes), 'test');
  const floor = { ...codes, name, say, ...actionsOf(codes, say) };
  await floor.mustSend(
    say.received({ item: codes.reel, kind: 'reel', part: 'C-100N', lot: codes.lot }),
    say.received({ item: codes.stencil, kind: 'stencil' }),
    say.mounted(codes.stencil, codes.print, 'stencil'),
    say.mounted(codes.reel, codes.place, 'F1'),
  );
  return floor;
}

type Codes = Record<'print' | 'place' | 'test' | 'test2' | 'rework' | 'product' | 'inner', string> &
  Record<'printer' | 'tester', string>;

function plantOf({ print, place, test, test2, rework, product, inner, printer, tester }: Codes) {
  return {
    stations: [
      { code: print, operation: 'print', slots: [{ name: 'stencil', holds: 'stencil' }] },
      {
        code: place,
        operation: 'place',
        slots: [
          { name: 'F1', holds: 'reel' },
          { name: 'F2', holds: 'reel' },
        ],
      },
      { code: test, operation: 'test' },
      { code: test2, operation: 'test' },
      { code: rework, operation: 'rework' },
    ],
    products: [
      {
        number: product,
        revision: 'C',
        serialPattern: '^W',
        route: [
          { step: 10, operation: 'print' },
          { step: 20, operation: 'place' },
          { step: 30, operation: 'test', attempts: 2 },
        ],
        bom: [{ part: 'C-100N', positions: ['C1', 'C2'], station: place, slot: 'F1' }],
      },
      { number: inner, revision: 'A', route: [{ step: 10, operation: 'test' }] },
    ],
    operators: [
      { badge: printer, operations: ['print', 'place'] },
      { badge: tester, operations: ['test'] },
    ],
  };
}

function actionsOf(codes: Codes, say: EventMaker) {
  const { print, place, test, product, inner } = codes;
  const start = (unit: string) => say.started({ unit, product, revision: 'C' });
  const through = (unit: string) => [
    start(unit),
    say.passed(unit, print),
    say.passed(unit, place),
    say.passed(unit, test),
  ];
  const send = async (...events: unknown[]): Promise<string[]> =>
    (await appendEvents(events, TOKEN)).map(briefly);
  return {
    start,
    startInner: (unit: string) => say.started({ unit, product: inner, revision: 'A' }),
    /** Started and passed everywhere. */
    through,
    /** The same with its sign-off. */
    finished: (unit: string) => [...through(unit), say.signed(unit)],
    /** Sends events together; each answer as `recorded`, `recorded flag, …`, `already_recorded` or `refused code, …`. */
    send,
    /** Sends events that must all be recorded without a flag. */
    mustSend: async (...events: WireEvent[]): Promise<void> => {
      const answers = await send(...events);
      const bad = answers.findIndex((answer) => answer !== 'recorded');
      if (bad !== -1) throw new Error(`${answers[bad]}: ${JSON.stringify(events[bad])}`);
    },
    /** The reasons of a check, empty for go. */
    check: async (unit: string, station: string, operator?: string): Promise<string[]> => {
      const answer = await checkUnit({ unit, station, ...(operator === undefined ? {} : { operator }) });
      if (answer.go !== (answer.reasons.length === 0))
        throw new Error('go and reasons contradict each other');
      return answer.reasons.map(({ code }) => code);
    },
  };
}

export type Floor = Awaited<ReturnType<typeof openFloor>>;

function briefly({ outcome, refusal, flags }: EventResult): string {
  const all = refusal === undefined ? (flags ?? []) : [refusal, ...(refusal.also ?? [])];
  const codes = [...new Set(all.map(({ code }) => code))];
  return codes.length === 0 ? outcome : `${outcome} ${codes.join(', ')}`;
}

/** Everything that the log keeps about an id: how often it was recorded, and the codes of its refusals. */
export async function keptOf(id: string): Promise<{ recorded: number; refusals: string[] }> {
  const { pool } = database();
  const events = await pool.query('select 1 from log.event where id = $1', [id]);
  const refusals = await pool.query('select code from log.refusal where event = $1 order by position', [id]);
  return { recorded: events.rowCount ?? 0, refusals: refusals.rows.map((row) => String(row.code)) };
}
