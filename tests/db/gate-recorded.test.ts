import { describe, expect, it } from 'vitest';
import { database } from '@/lib/server/database';
import { putPlant } from '@/lib/server/put-plant';
import { numberedId } from '@/tests/support/event-maker';
import { freshDatabase } from '@/tests/support/fresh-database';
import { type Floor, openFloor } from '@/tests/support/gate-floor';

freshDatabase();

const record = { gate: 'record' } as const;

async function flagsOf(id: string): Promise<string[]> {
  const { rows } = await database().pool.query('select flags from read.flagged where event = $1', [id]);
  return rows.flatMap((row) => row.flags.map((flag: { code: string }) => flag.code));
}

async function judgementCountOf(id: string): Promise<number> {
  const { rows } = await database().pool.query('select count(*) as n from log.judgement where event = $1', [
    id,
  ]);
  return rows[0].n;
}

/** A finished unit as a machine reports it afterwards, everything under `gate: record`. */
function asRecorded(floor: Floor, unit: string) {
  return floor.finished(unit).map((event) => ({ ...event, ...record }));
}

describe('what happened anyway', () => {
  it('is recorded with flags, and its unit is put on hold until a release', async () => {
    const { check, mustSend, send, start, say, test, print } = await openFloor();
    await mustSend(start('W1'));
    const wrong = say.passed('W1', test, record);
    expect(await send(wrong)).toEqual(['recorded wrong_step']);
    expect(await check('W1', print)).toEqual(['on_hold']);
    await mustSend(say.released(wrong.id));
    expect(await check('W1', print)).toEqual([]);
  });

  it('holds neither twice nor itself: the next recorded event is judged on its own', async () => {
    const { mustSend, send, start, say, test, print } = await openFloor();
    await mustSend(start('W2'));
    expect(await send(say.passed('W2', test, record), say.passed('W2', print, record))).toEqual([
      'recorded wrong_step',
      'recorded',
    ]);
  });

  it('carries no flag when every rule was kept, whatever the type', async () => {
    const floor = await openFloor();
    const { say, startInner, place, name, test } = floor;
    const [reel, jack] = [name('R-rec'), name('J-rec')];
    const hold = say.held('unit', 'W3', { ...record, at: say.minute(50) });
    const events = [
      ...asRecorded(floor, 'W3'),
      startInner('P3'),
      say.passed('P3', test, record),
      say.joined('P3', 'W3', record),
      say.separated('P3', 'W3', record),
      say.joined('P3', 'W3', record),
      say.received({ item: reel, kind: 'reel', part: 'C-100N' }, record),
      say.counted(reel, record),
      say.inspected(reel, record),
      say.mounted(reel, place, 'F1', record),
      say.unmounted(reel, place, 'F1', record),
      say.retired(reel, record),
      say.received({ item: jack, kind: 'lot' }, record),
      say.removed('W3', 'J1', record),
      say.installed({ unit: 'W3', position: 'J1', item: jack }, record),
      say.packed('W3', 'CT-3', record),
      say.unpacked('W3', 'CT-3', record),
      say.packed('W3', 'CT-3', record),
      say.nested('CT-3', 'PL-3', record),
      say.unnested('CT-3', 'PL-3', record),
      say.shipped('CT-3', record),
      say.returned('W3', record),
      say.scrapped('W3', record),
      hold,
      say.released(hold.id, { ...record, at: say.minute(51) }),
      say.voided(numberedId(99, 0xffff), record),
    ];
    const answers = await floor.send(...events);
    expect(events.map(({ type }, index) => `${type} ${answers[index]}`)).toEqual(
      events.map(({ type }) => `${type} recorded`),
    );
    expect(await floor.check('P3', test)).toEqual([]);
  });

  it('holds a unit with a wrong part that is on it already; under enforce the contract refuses none', async () => {
    const { send, mustSend, say, start, check, print, reel, name } = await openFloor();
    const wrong = name('R-wrong');
    await mustSend(
      start('W6'),
      start('W7'),
      say.received({ item: wrong, kind: 'reel', part: 'R-10K' }),
      say.removed('W6', 'C1'),
      say.removed('W7', 'C1'),
    );
    expect(
      await send(
        say.installed({ unit: 'W6', position: 'C1', item: reel }, record),
        say.installed({ unit: 'W7', position: 'C1', item: wrong }),
        say.installed({ unit: 'W6', position: 'C1', item: wrong }, record),
      ),
    ).toEqual(['recorded', 'recorded', 'recorded wrong_part']);
    expect(await check('W6', print)).toEqual(['on_hold']);
    expect(await check('W7', print)).toEqual([]);
  });

  it('is flagged as it would be refused', async () => {
    const { send, mustSend, say, start, place, print, reel, name } = await openFloor();
    await mustSend(start('W4'), start('W5'));
    const hold = say.held('lot', name('L-4'));
    await mustSend(hold, say.released(hold.id));
    expect(
      await send(
        say.received({ item: reel, kind: 'reel' }, record),
        say.mounted(name('R-none'), place, 'F1', record),
        say.unmounted(reel, place, 'F2', record),
        say.joined('W4', 'W4', record),
        say.separated('W4', 'W5', record),
        say.packed('W4', 'CT-4', record),
        say.released(hold.id, record),
        say.started({ unit: 'W4', product: 'none', revision: 'C' }, record),
        say.passed('W5', print, { ...record, operator: 'nobody' }),
      ),
    ).toEqual([
      'recorded already_received',
      'recorded unknown_item',
      'recorded not_in_slot',
      'recorded would_contain_itself',
      'recorded not_inside',
      // It is inside itself by then.
      'recorded inside_another_unit, unfinished, unsigned',
      'recorded hold_already_released',
      'recorded unknown_product, already_started',
      'recorded unknown_operator',
    ]);
  });

  it('refuses only what is from the future or reuses an id', async () => {
    const { send, say } = await openFloor();
    const event = say.passed('W-unknown', 'NOWHERE', record);
    expect(await send(event, { ...event, station: 'ELSEWHERE' })).toEqual([
      'recorded unknown_station, unknown_unit',
      'refused event_id_reused',
    ]);
    expect(await send(say.signed('W-unknown', { ...record, at: '2099-01-01T00:00:00Z' }))).toEqual([
      'refused time_in_future',
    ]);
  });
});

describe('the missing event comes', () => {
  it('takes the flag and the hold away: a start after its results', async () => {
    const { check, mustSend, send, start, say, print, place } = await openFloor();
    const started = start('W10');
    const printed = say.passed('W10', print, record);
    expect(await send(printed)).toEqual(['recorded unknown_unit']);
    expect(await check('W10', place)).toEqual(['unknown_unit']);
    await mustSend(started);
    expect(await flagsOf(printed.id)).toEqual([]);
    expect(await check('W10', place)).toEqual([]);
  });

  it('takes it away within one request too, before the next event is judged', async () => {
    const { send, start, say, print, place } = await openFloor();
    const started = start('W11');
    const printed = say.passed('W11', print, record);
    const placed = say.passed('W11', place);
    expect(await send(printed)).toEqual(['recorded unknown_unit']);
    expect(await send(started, placed)).toEqual(['recorded', 'recorded']);
  });

  it('takes it away when all come in one request, the last one first', async () => {
    const floor = await openFloor();
    const events = asRecorded(floor, 'W12').reverse();
    expect(await floor.send(...events)).toEqual(events.map(() => 'recorded'));
  });

  it('takes it away for a mount that comes late', async () => {
    const { mustSend, send, say, start, print, place, reel, name } = await openFloor();
    await mustSend(start('W13'), say.passed('W13', print), say.unmounted(reel, place, 'F1'));
    const mount = say.mounted(name('R-late'), place, 'F1');
    const placed = say.passed('W13', place, record);
    expect(await send(placed)).toEqual(['recorded slot_empty']);
    await mustSend(say.received({ item: name('R-late'), kind: 'reel', part: 'C-100N' }), mount);
    expect(await flagsOf(placed.id)).toEqual([]);
  });

  it('takes it away for a shipment whose unit was signed, by the sign-off that comes late', async () => {
    const { mustSend, send, through, say } = await openFloor();
    await mustSend(...through('W14'));
    const [signed, packed, shipped] = [
      say.signed('W14'),
      say.packed('W14', 'CT-14', record),
      say.shipped('CT-14', record),
    ];
    expect(await send(packed, shipped)).toEqual(['recorded unsigned', 'recorded unsigned']);
    await mustSend(signed);
    expect([await flagsOf(packed.id), await flagsOf(shipped.id)]).toEqual([[], []]);
  });

  it('takes it away for an outer unit, when the inner one is finished by a late result', async () => {
    const { mustSend, send, finished, startInner, say, test } = await openFloor();
    await mustSend(...finished('W15'), startInner('P15'));
    const [passed, joined] = [say.passed('P15', test), say.joined('P15', 'W15')];
    await mustSend(joined);
    const packed = say.packed('W15', 'CT-15', record);
    expect(await send(packed)).toEqual(['recorded unfinished']);
    await mustSend(passed);
    expect(await flagsOf(packed.id)).toEqual([]);
  });

  it('takes it away when the hold is voided, or was released before', async () => {
    const { mustSend, send, start, say, print, place } = await openFloor();
    const [started, first] = [start('W16'), say.held('unit', 'W16')];
    await mustSend(started, first);
    const printed = say.passed('W16', print, record);
    expect(await send(printed)).toEqual(['recorded on_hold']);
    await mustSend(say.voided(first.id));
    expect(await flagsOf(printed.id)).toEqual([]);
    const second = say.held('unit', 'W16');
    await mustSend(second);
    const release = say.released(second.id);
    const placed = say.passed('W16', place, record);
    expect(await send(placed)).toEqual(['recorded on_hold']);
    await mustSend(release);
    expect(await flagsOf(placed.id)).toEqual([]);
  });

  it('takes it away when the event itself is voided', async () => {
    const { check, mustSend, send, start, say, test, print } = await openFloor();
    await mustSend(start('W17'));
    const wrong = say.passed('W17', test, record);
    expect(await send(wrong)).toEqual(['recorded wrong_step']);
    await mustSend(say.voided(wrong.id));
    expect(await flagsOf(wrong.id)).toEqual([]);
    expect(await check('W17', print)).toEqual([]);
  });

  it('takes it away for a plant file that comes late', async () => {
    const { send, say, start, name, mustSend } = await openFloor();
    await mustSend(start('W18'));
    const signed = say.signed('W18', { ...record, station: name('QA') });
    expect(await send(signed)).toEqual(['recorded unknown_station']);
    await putPlant({ stations: [{ code: name('QA'), operation: 'sign' }] }, 'test');
    expect(await flagsOf(signed.id)).toEqual([]);
  });
});

describe("the server's own hold", () => {
  it('lets an earlier event come, which may be the missing one; a hold of a person does not', async () => {
    const { mustSend, send, start, say, print, place } = await openFloor();
    await mustSend(start('W30'));
    const [missing, another] = [say.passed('W30', print), say.removed('W30', 'C1')];
    const placed = say.passed('W30', place, record);
    expect(await send(placed)).toEqual(['recorded wrong_step']);
    expect(await send(say.passed('W30', place))).toEqual(['refused on_hold, wrong_step']);
    await mustSend(missing);
    expect(await flagsOf(placed.id)).toEqual([]);
    await mustSend(say.held('unit', 'W30'));
    expect(await send({ ...missing, id: another.id })).toEqual(['refused on_hold']);
  });
});

describe('judgements', () => {
  it('are kept when they change, and only then', async () => {
    const { mustSend, send, start, say, print, test, place } = await openFloor();
    await mustSend(start('W20'), say.passed('W20', print));
    const late = say.passed('W20', place);
    const failed = say.failed('W20', test, record);
    const again = say.passed('W20', print, record);
    expect(await send(failed)).toEqual(['recorded wrong_step']);
    expect(await send(again)).toEqual(['recorded open_failure']);
    expect(await judgementCountOf(again.id)).toBe(1);
    await send(say.removed('W20', 'C1'), say.removed('W20', 'C2'));
    await send(say.removed('W20', 'C1'));
    expect(await judgementCountOf(again.id)).toBe(1);
    await mustSend(say.released(failed.id), say.released(again.id), late);
    expect(await judgementCountOf(failed.id)).toBe(2);
    expect(await flagsOf(failed.id)).toEqual([]);
  });
});
