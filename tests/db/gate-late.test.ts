import { describe, expect, it } from 'vitest';
import { database } from '@/lib/server/database';
import { numberedId } from '@/tests/support/event-maker';
import { freshDatabase } from '@/tests/support/fresh-database';
import { openFloor } from '@/tests/support/gate-floor';

freshDatabase();

async function isVoided(id: string): Promise<boolean> {
  const { rowCount } = await database().pool.query('select 1 from read.voided where event = $1', [id]);
  return rowCount !== 0;
}

describe('an event that comes late', () => {
  it('is judged on its unit as it stood at its time', async () => {
    const { mustSend, send, start, say, print, place, test } = await openFloor();
    await mustSend(start('W1'));
    const [printed, placed] = [say.passed('W1', print), say.passed('W1', place)];
    expect(await send(placed)).toEqual(['refused wrong_step']);
    await mustSend(printed, placed);
    const before = say.passed('W1', test, { at: printed.at, id: numberedId(1, 0xfffe) });
    expect(await send(before)).toEqual(['refused wrong_step']);
    await mustSend(say.failed('W1', test));
    await mustSend(say.passed('W1', print, { at: printed.at }));
  });

  it('is judged on what stood in the slots at its time', async () => {
    const { mustSend, send, start, say, print, place, reel } = await openFloor();
    await mustSend(start('W2'), say.passed('W2', print));
    const inTime = say.passed('W2', place);
    const unmounted = say.unmounted(reel, place, 'F1');
    const tooLate = say.passed('W2', place);
    await mustSend(unmounted);
    expect(await send(tooLate, inTime)).toEqual(['refused slot_empty', 'recorded']);
  });

  it('at the very moment of a mount finds the item, at that of an unmount does not', async () => {
    const { mustSend, send, start, say, print, place, reel } = await openFloor();
    await mustSend(start('W3'), say.passed('W3', print));
    const out = say.unmounted(reel, place, 'F1');
    const back = say.mounted(reel, place, 'F1');
    await mustSend(out, back);
    // An id before theirs and one after: the moment alone decides.
    for (const id of [numberedId(2, 0), numberedId(2, 0xffff)]) {
      expect(await send(say.passed('W3', place, { at: out.at, id }))).toEqual(['refused slot_empty']);
    }
    expect(await send(say.passed('W3', place, { at: back.at, id: numberedId(3, 0) }))).toEqual(['recorded']);
  });

  it('is stopped by a hold that a person placed since, and not by one released before it', async () => {
    const { mustSend, send, start, say, print } = await openFloor();
    await mustSend(start('W4'));
    const [early, hold] = [say.passed('W4', print), say.held('unit', 'W4')];
    await mustSend(hold);
    expect(await send(early)).toEqual(['refused on_hold']);
    const within = say.passed('W4', print);
    await mustSend(say.released(hold.id));
    expect(await send(within)).toEqual(['refused on_hold']);
    await mustSend(early, say.passed('W4', print));
  });

  it('may use an item that was retired after it', async () => {
    const { mustSend, send, start, say, print, place, name } = await openFloor();
    const jack = name('J-1');
    await mustSend(start('W5'), say.passed('W5', print), say.received({ item: jack, kind: 'lot' }));
    const early = say.passed('W5', place, {}, { used: [{ item: jack }] });
    await mustSend(say.retired(jack));
    const late = say.passed('W5', place, {}, { used: [{ item: jack }] });
    expect(await send(late, early)).toEqual(['refused retired', 'recorded']);
  });

  it('finds its unit inside another, or out of it, as it was then', async () => {
    const { mustSend, send, finished, startInner, say, test } = await openFloor();
    await mustSend(...finished('W6'), startInner('P6'), say.passed('P6', test));
    const joined = say.joined('P6', 'W6');
    const while1 = say.passed('P6', test);
    const packed = say.packed('W6', 'CT-6');
    const while2 = say.passed('P6', test);
    await mustSend(joined, packed);
    expect(await send(while2, while1)).toEqual(['refused already_packed', 'recorded']);
    expect(await send(say.separated('P6', 'W6', { at: while2.at }))).toEqual(['refused already_packed']);
  });

  it('that fails an inner unit before its outer one was packed in the same request is seen', async () => {
    const { mustSend, send, finished, startInner, say, test } = await openFloor();
    await mustSend(...finished('W7'), startInner('P7'));
    await mustSend(say.joined('P7', 'W7'), say.passed('P7', test));
    const failed = say.failed('P7', test);
    const packed = say.packed('W7', 'CT-7');
    const passed = say.passed('P7', test);
    expect(await send(failed, passed, packed)).toEqual(['recorded', 'recorded', 'refused open_failure']);
  });

  it('starts no serial that was started later', async () => {
    const { mustSend, send, start } = await openFloor();
    const [early, late] = [start('W8'), start('W8')];
    await mustSend(late);
    expect(await send(early)).toEqual(['refused already_started']);
  });
});

describe('ties', () => {
  it('go by id: of two results at one moment the later id is the last', async () => {
    const { check, mustSend, start, say, print, place } = await openFloor();
    await mustSend(start('W10'));
    const pass = say.passed('W10', print);
    const fail = say.failed('W10', print, { at: pass.at });
    await mustSend(fail, { ...pass, gate: 'record' });
    expect(await check('W10', place)).toEqual(['open_failure', 'wrong_step']);
  });

  it('are broken by id for joining too: a separation at the moment of its joining ends it', async () => {
    const { mustSend, send, start, startInner, say } = await openFloor();
    await mustSend(start('W11'), startInner('P11'));
    const joined = say.joined('P11', 'W11');
    const separated = say.separated('P11', 'W11', { at: joined.at });
    await mustSend(joined, separated);
    const between = say.joined('P11', 'W11', { at: joined.at });
    expect(await send(between)).toEqual(['recorded']);
  });
});

describe('a void', () => {
  it('takes all effect from an event that comes after it, whatever rule that breaks', async () => {
    const { check, mustSend, start, say, test, print } = await openFloor();
    await mustSend(start('W20'));
    const wrong = say.passed('W20', test);
    await mustSend(say.voided(wrong.id), wrong);
    expect(await check('W20', print)).toEqual([]);
    expect(await check('W20', test)).toEqual(['wrong_step']);
  });

  it('does the same in one request, and for a start', async () => {
    const { check, mustSend, start, say, print } = await openFloor();
    const started = start('W21');
    await mustSend(say.voided(started.id), started);
    expect(await check('W21', print)).toEqual(['unknown_unit']);
    await mustSend(start('W21'));
    expect(await check('W21', print)).toEqual([]);
  });

  it('of a void is refused; where it came first it has no effect', async () => {
    const { check, mustSend, send, start, say, print } = await openFloor();
    const started = start('W22');
    const first = say.voided(started.id);
    const second = say.voided(first.id);
    await mustSend(started, first);
    expect(await send(second)).toEqual(['refused void_of_void']);
    const again = start('W22');
    const third = say.voided(again.id);
    const fourth = say.voided(third.id);
    await mustSend(fourth, again, third);
    expect(await check('W22', print)).toEqual(['unknown_unit']);
    expect(await isVoided(again.id)).toBe(true);
  });

  it('of a void under record is flagged and has no effect', async () => {
    const { check, mustSend, send, start, say, print } = await openFloor();
    const started = start('W23');
    const first = say.voided(started.id);
    await mustSend(started, first);
    expect(await send(say.voided(first.id, { gate: 'record' }))).toEqual(['recorded void_of_void']);
    expect(await check('W23', print)).toEqual(['unknown_unit']);
  });

  it('given twice is one', async () => {
    const { check, mustSend, start, say, print, place } = await openFloor();
    await mustSend(start('W24'));
    const printed = say.passed('W24', print);
    await mustSend(printed, say.voided(printed.id), say.voided(printed.id));
    expect(await check('W24', place)).toEqual(['wrong_step']);
  });

  it('of a mount brings back what stood there before', async () => {
    const { check, mustSend, start, say, print, place, name } = await openFloor();
    await mustSend(start('W25'), say.passed('W25', print));
    const wrong = name('R-wrong');
    const mount = say.mounted(wrong, place, 'F1', { gate: 'record' });
    await mustSend(say.received({ item: wrong, kind: 'reel', part: 'C-100N' }), mount);
    await mustSend(say.held('item', wrong));
    expect(await check('W25', place)).toEqual(['on_hold']);
    await mustSend(say.voided(mount.id));
    expect(await check('W25', place)).toEqual([]);
  });

  it('of a packing or a shipment lets the unit go on', async () => {
    const { check, mustSend, finished, say, test } = await openFloor();
    await mustSend(...finished('W26'));
    const [packed, shipped] = [say.packed('W26', 'CT-26'), say.shipped('CT-26')];
    await mustSend(packed, shipped);
    expect(await check('W26', test)).toEqual(['already_shipped']);
    await mustSend(say.voided(shipped.id));
    expect(await check('W26', test)).toEqual(['already_packed']);
    await mustSend(say.voided(packed.id));
    expect(await check('W26', test)).toEqual([]);
  });
});

describe('containers in a circle, as a record may have them', () => {
  it('forget a shipment that is voided', async () => {
    const { mustSend, finished, say } = await openFloor();
    await mustSend(...finished('W30'), say.packed('W30', 'CT-30'));
    const record = { gate: 'record' } as const;
    const shipped = say.shipped('CT-30', record);
    await mustSend(say.nested('CT-30', 'PL-30'), shipped);
    const { send } = await openFloor();
    await send(say.nested('PL-30', 'CT-30', record), say.voided(shipped.id));
    const { rows } = await database().pool.query(
      `select container, shipment from read.container where container in ('CT-30', 'PL-30') order by container`,
    );
    expect(rows).toEqual([
      { container: 'CT-30', shipment: null },
      { container: 'PL-30', shipment: null },
    ]);
  });
});
