import { describe, expect, it } from 'vitest';
import { checkUnit } from '@/lib/server/check-unit';
import { freshDatabase } from '@/tests/support/fresh-database';
import { openFloor } from '@/tests/support/gate-floor';

freshDatabase();

describe('the way along the route', () => {
  it('is go for a check and recorded for an event, step by step', async () => {
    const { check, mustSend, finished, say, print, place, test } = await openFloor();
    const [start, ...rest] = finished('W1');
    if (start === undefined) throw new Error('no start');
    await mustSend(start);
    for (const [index, station] of [print, place, test].entries()) {
      expect(await check('W1', station)).toEqual([]);
      const event = rest[index];
      if (event !== undefined) await mustSend(event);
    }
    await mustSend(say.signed('W1'), say.packed('W1', 'CT-way'), say.shipped('CT-way'));
  });

  it('says what comes next, and what is missing, naming the step', async () => {
    const { mustSend, start, send, say, print, test } = await openFloor();
    await mustSend(start('W2'), say.passed('W2', print));
    expect(await checkUnit({ unit: 'W2', station: test })).toEqual({
      go: false,
      reasons: [{ code: 'wrong_step', unit: 'W2', operation: 'test', step: 20, expected: 'place' }],
      next: { operation: 'place', step: 20 },
    });
    expect(await send(say.passed('W2', test))).toEqual(['refused wrong_step']);
  });

  it('refuses who is unknown or not qualified, and where nobody knows', async () => {
    const { check, mustSend, start, print, tester, printer } = await openFloor();
    await mustSend(start('W3'));
    expect(await check('W3', print, tester)).toEqual(['not_qualified']);
    expect(await check('W3', print, printer)).toEqual([]);
    expect(await check('W3', print, 'op-nobody')).toEqual(['unknown_operator']);
    expect(await check('W3', 'NOWHERE')).toEqual(['unknown_station']);
    expect(await check('W-none', print)).toEqual(['unknown_unit']);
    expect(await checkUnit({ unit: 'W-none', station: print })).toMatchObject({ next: null });
  });

  it('checks without changing anything', async () => {
    const { check, mustSend, start, print } = await openFloor();
    await mustSend(start('W4'));
    for (let round = 0; round < 3; round += 1) expect(await check('W4', print)).toEqual([]);
    expect(await check('W4', 'NOWHERE')).toEqual(['unknown_station']);
  });

  it('starts a serial once, also within one request', async () => {
    const { send, start } = await openFloor();
    expect(await send(start('W5'), start('W5'))).toEqual(['recorded', 'refused already_started']);
    expect(await send(start('W5'))).toEqual(['refused already_started']);
    expect(await send(start('X5'))).toEqual(['refused serial_pattern_mismatch']);
  });
});

describe('a fail', () => {
  it('lets only the same operation follow, at any station of it', async () => {
    const { check, mustSend, through, say, print, test, test2 } = await openFloor();
    await mustSend(...through('W10').slice(0, 3), say.failed('W10', test));
    expect(await check('W10', print)).toEqual(['open_failure']);
    expect(await check('W10', test2)).toEqual([]);
    await mustSend(say.passed('W10', test2));
    expect(await check('W10', print)).toEqual([]);
  });

  it('that uses up the attempts holds the unit; a release lets it go on with one more', async () => {
    const { check, mustSend, send, through, say, test } = await openFloor();
    await mustSend(...through('W11').slice(0, 3), say.failed('W11', test));
    const last = say.failed('W11', test);
    await mustSend(last);
    expect(await check('W11', test)).toEqual(['on_hold']);
    expect(await send(say.passed('W11', test))).toEqual(['refused on_hold']);
    await mustSend(say.released(last.id));
    expect(await check('W11', test)).toEqual([]);
    const again = say.failed('W11', test);
    await mustSend(again);
    expect(await check('W11', test)).toEqual(['on_hold']);
    await mustSend(say.released(again.id), say.passed('W11', test));
    expect(await check('W11', test)).toEqual([]);
  });

  it('that uses up the attempts holds within its own request too', async () => {
    const { send, through, say, test } = await openFloor();
    const placed = through('W12').slice(0, 3);
    const fails = [1, 2, 3].map(() => say.failed('W12', test));
    expect((await send(...placed, ...fails)).slice(3)).toEqual(['recorded', 'recorded', 'refused on_hold']);
  });

  it('that is voided holds no more', async () => {
    const { check, mustSend, through, say, test } = await openFloor();
    const [placed, first, last] = [
      through('W13').slice(0, 3),
      say.failed('W13', test),
      say.failed('W13', test),
    ];
    await mustSend(...placed, first, last);
    expect(await check('W13', test)).toEqual(['on_hold']);
    await mustSend(say.voided(last.id));
    expect(await check('W13', test)).toEqual([]);
  });
});

describe('material', () => {
  it('must be there, and be the right part', async () => {
    const { check, mustSend, start, say, print, place, reel, stencil, name } = await openFloor();
    await mustSend(start('W20'), say.passed('W20', print));
    await mustSend(say.unmounted(reel, place, 'F1'), say.unmounted(stencil, print, 'stencil'));
    expect(await check('W20', place)).toEqual(['slot_empty']);
    expect(await check('W20', print)).toEqual(['slot_empty']);
    const wrong = name('R-wrong');
    await mustSend(say.received({ item: wrong, kind: 'reel', part: 'R-10K' }));
    await mustSend({ ...say.mounted(reel, place, 'F1'), at: say.minute(20) });
    expect(await check('W20', place)).toEqual([]);
  });

  it('of the wrong part is refused at the slot, and stops units when it got in anyway', async () => {
    const { check, mustSend, send, start, say, print, place, name } = await openFloor();
    await mustSend(start('W21'), say.passed('W21', print));
    const wrong = name('R-wrong');
    await mustSend(say.received({ item: wrong, kind: 'reel', part: 'R-10K' }));
    expect(await send(say.mounted(wrong, place, 'F1'))).toEqual(['refused wrong_part']);
    expect(await send(say.mounted(wrong, print, 'stencil'))).toEqual(['refused wrong_kind']);
    expect(await send(say.mounted(wrong, place, 'F9'))).toEqual(['refused unknown_slot']);
    expect(await send(say.mounted(wrong, place, 'F1', { gate: 'record' }))).toEqual(['recorded wrong_part']);
    expect(await check('W21', place)).toEqual(['wrong_part']);
  });

  it('stays where it is until it is unmounted', async () => {
    const { send, mustSend, say, place, reel, name } = await openFloor();
    const other = name('R-other');
    await mustSend(say.received({ item: other, kind: 'reel', part: 'C-100N' }));
    expect(await send(say.unmounted(other, place, 'F1'))).toEqual(['refused not_in_slot']);
    await mustSend(say.unmounted(reel, place, 'F1'));
    expect(await send(say.unmounted(reel, place, 'F1'))).toEqual(['refused not_in_slot']);
  });

  it('is received once, and not mounted when retired or unknown', async () => {
    const { send, mustSend, say, place, name } = await openFloor();
    const reel = name('R-new');
    const receive = () => say.received({ item: reel, kind: 'reel', part: 'C-100N' });
    expect(await send(say.mounted(reel, place, 'F1'))).toEqual(['refused unknown_item']);
    expect(await send(receive(), receive())).toEqual(['recorded', 'refused already_received']);
    await mustSend(say.retired(reel));
    expect(await send(say.mounted(reel, place, 'F1'))).toEqual(['refused retired']);
  });
});

describe('a hold', () => {
  it('on a unit stops work, sign-off, packing and shipping until it is released', async () => {
    const { check, mustSend, send, finished, say, test } = await openFloor();
    const [done, hold] = [finished('W30'), say.held('unit', 'W30')];
    await mustSend(...done, hold);
    expect(await check('W30', test)).toEqual(['on_hold']);
    expect(await send(say.signed('W30'), say.packed('W30', 'CT-30'))).toEqual([
      'refused on_hold',
      'refused on_hold',
    ]);
    expect(await send(say.released(hold.id), say.released(hold.id))).toEqual([
      'recorded',
      'refused hold_already_released',
    ]);
    await mustSend(say.packed('W30', 'CT-30'));
  });

  it('on an item, or on its lot, stops units that would draw from it', async () => {
    const { check, mustSend, start, say, print, place, reel, lot } = await openFloor();
    await mustSend(start('W31'), say.passed('W31', print));
    for (const hold of [say.held('item', reel), say.held('lot', lot)]) {
      await mustSend(hold);
      expect(await check('W31', place)).toEqual(['on_hold']);
      expect(await check('W31', print)).toEqual([]);
      await mustSend(say.released(hold.id));
      expect(await check('W31', place)).toEqual([]);
    }
  });

  it('on a lot reaches items and boards of it that come later', async () => {
    const { mustSend, send, say, place, product, name } = await openFloor();
    const lot = name('L-later');
    await mustSend(say.held('lot', lot));
    await mustSend(say.received({ item: name('R-later'), kind: 'reel', part: 'C-100N', lot }));
    expect(await send(say.mounted(name('R-later'), place, 'F1'))).toEqual(['refused on_hold']);
    const start = say.started({ unit: 'W32', product, revision: 'C', boardLot: lot });
    expect(await send(start)).toEqual(['refused on_hold']);
  });

  it('on a container, or on one around it, lets nothing in and nothing out of the door', async () => {
    const { mustSend, send, finished, say } = await openFloor();
    await mustSend(...finished('W33'), ...finished('W34'));
    await mustSend(say.packed('W33', 'CT-33'), say.nested('CT-33', 'PL-33'));
    const hold = say.held('container', 'PL-33');
    await mustSend(hold);
    expect(await send(say.packed('W34', 'CT-33'), say.shipped('CT-33'), say.shipped('PL-33'))).toEqual([
      'refused on_hold',
      'refused on_hold',
      'refused on_hold',
    ]);
    await mustSend(say.released(hold.id), say.packed('W34', 'CT-33'), say.shipped('PL-33'));
  });

  it('names something known, but for a lot; a release names a hold', async () => {
    const { send, say } = await openFloor();
    expect(
      await send(
        say.held('unit', 'W-none'),
        say.held('item', 'R-none'),
        say.held('container', 'CT-none'),
        say.held('lot', 'L-none'),
        say.released(say.signed('W-none').id),
      ),
    ).toEqual([
      'refused unknown_unit',
      'refused unknown_item',
      'refused unknown_container',
      'recorded',
      'refused unknown_hold',
    ]);
  });

  it('that is voided was never there; a voided release was none', async () => {
    const { check, mustSend, start, say, print } = await openFloor();
    const [started, hold] = [start('W35'), say.held('unit', 'W35')];
    const release = say.released(hold.id);
    await mustSend(started, hold, release);
    expect(await check('W35', print)).toEqual([]);
    await mustSend(say.voided(release.id));
    expect(await check('W35', print)).toEqual(['on_hold']);
    await mustSend(say.voided(hold.id));
    expect(await check('W35', print)).toEqual([]);
  });
});

describe('packing and shipping', () => {
  it('take neither unfinished nor unsigned nor failed units', async () => {
    const { mustSend, send, through, say, test } = await openFloor();
    await mustSend(...through('W40').slice(0, 3), say.signed('W40'));
    expect(await send(say.packed('W40', 'CT-40'))).toEqual(['refused unfinished']);
    await mustSend(say.passed('W40', test));
    await mustSend(...through('W41'));
    expect(await send(say.packed('W41', 'CT-40'))).toEqual(['refused unsigned']);
    await mustSend(say.signed('W41'), say.failed('W41', test));
    expect(await send(say.packed('W41', 'CT-40'))).toEqual(['refused open_failure']);
    expect(await send(say.packed('W40', 'CT-40'), say.packed('W40', 'CT-41'))).toEqual([
      'recorded',
      'refused already_packed',
    ]);
  });

  it('look into units, at any depth', async () => {
    const { mustSend, send, finished, startInner, say, test } = await openFloor();
    await mustSend(...finished('W42'), startInner('P1'), startInner('P2'));
    await mustSend(say.joined('P1', 'W42'), say.joined('P2', 'P1'), say.passed('P1', test));
    expect(await send(say.packed('W42', 'CT-42'))).toEqual(['refused unfinished']);
    await mustSend(say.failed('P2', test));
    expect(await send(say.packed('W42', 'CT-42'))).toEqual(['refused open_failure']);
    const hold = say.held('unit', 'P2');
    await mustSend(say.passed('P2', test), hold);
    expect(await send(say.packed('W42', 'CT-42'))).toEqual(['refused on_hold']);
    await mustSend(say.released(hold.id), say.packed('W42', 'CT-42'));
    expect(await send(say.passed('P2', test), say.packed('P1', 'CT-43'))).toEqual([
      'refused already_packed',
      'refused already_packed, inside_another_unit, unsigned',
    ]);
  });

  it('look into containers, at any depth: what became bad after packing does not leave', async () => {
    const { mustSend, send, finished, say } = await openFloor();
    await mustSend(...finished('W44'), ...finished('W45'));
    await mustSend(say.packed('W44', 'CT-44'), say.packed('W45', 'CT-45'));
    await mustSend(say.nested('CT-44', 'BX-44'), say.nested('BX-44', 'PL-44'), say.nested('CT-45', 'PL-44'));
    const hold = say.held('unit', 'W44');
    await mustSend(hold);
    expect(await send(say.shipped('PL-44'), say.shipped('CT-45'))).toEqual(['refused on_hold', 'recorded']);
    expect(await send(say.shipped('CT-44'), say.shipped('BX-44'))).toEqual([
      'refused on_hold',
      'refused on_hold',
    ]);
    await mustSend(say.released(hold.id), say.shipped('PL-44'));
    expect(await send(say.shipped('CT-44'), say.unpacked('W44', 'CT-44'))).toEqual([
      'refused already_shipped',
      'refused already_shipped',
    ]);
  });

  it('can be undone in the same request', async () => {
    const { mustSend, finished, say } = await openFloor();
    await mustSend(...finished('W46'), say.packed('W46', 'CT-46'), say.unpacked('W46', 'CT-46'));
    await mustSend(
      say.packed('W46', 'CT-46'),
      say.nested('CT-46', 'PL-46'),
      say.unnested('CT-46', 'PL-46'),
      say.nested('CT-46', 'PL-47'),
      say.shipped('PL-47'),
    );
  });

  it('keep circles out', async () => {
    const { mustSend, send, finished, say } = await openFloor();
    await mustSend(
      ...finished('W47'),
      ...finished('W48'),
      say.packed('W47', 'CT-47'),
      say.packed('W48', 'CT-48'),
    );
    expect(await send(say.nested('CT-47', 'CT-48'), say.nested('CT-48', 'CT-47'))).toEqual([
      'recorded',
      'refused would_contain_itself',
    ]);
    expect(await send(say.nested('CT-47', 'CT-47'), say.unnested('CT-47', 'CT-99'))).toEqual([
      'refused would_contain_itself',
      'refused unknown_container',
    ]);
  });
});

describe('joining', () => {
  it('keeps circles and second outer units out, and ends with separation', async () => {
    const { mustSend, send, start, startInner, say } = await openFloor();
    await mustSend(start('W50'), startInner('P50'), startInner('P51'));
    expect(
      await send(
        say.joined('P50', 'W50'),
        say.joined('P50', 'P51'),
        say.joined('W50', 'P50'),
        say.separated('P51', 'W50'),
        say.separated('P50', 'W50'),
        say.joined('P50', 'P51'),
      ),
    ).toEqual([
      'recorded',
      'refused already_inside',
      'refused would_contain_itself',
      'refused not_inside',
      'recorded',
      'recorded',
    ]);
  });

  it('keeps circles out that go through several units', async () => {
    const { mustSend, send, start, startInner, say } = await openFloor();
    await mustSend(start('W54'), startInner('P54'), startInner('P55'), startInner('P56'));
    await mustSend(say.joined('P54', 'W54'), say.joined('P55', 'P54'), say.joined('P56', 'P55'));
    expect(await send(say.joined('W54', 'P55'), say.joined('W54', 'P56'))).toEqual([
      'refused would_contain_itself',
      'refused would_contain_itself',
    ]);
  });

  it('takes salvage from known units only', async () => {
    const { send, mustSend, start, say, reel } = await openFloor();
    await mustSend(start('W51'), start('W52'));
    const salvage = (fromUnit: string) =>
      say.installed({ unit: 'W51', position: 'C1', fromUnit, fromPosition: 'C1' });
    expect(
      await send(
        salvage('W-none'),
        salvage('W52'),
        say.installed({ unit: 'W51', position: 'C2', item: 'R-none' }),
        say.installed({ unit: 'W51', position: 'C2', item: reel }),
        say.removed('W51', 'C2'),
      ),
    ).toEqual(['refused unknown_unit', 'recorded', 'refused unknown_item', 'recorded', 'recorded']);
  });

  it('leaves scrap alone, which comes back from nowhere', async () => {
    const { send, mustSend, start, startInner, say, print } = await openFloor();
    await mustSend(start('W53'), startInner('P53'), say.joined('P53', 'W53'), say.scrapped('W53'));
    expect(await send(say.passed('W53', print), say.signed('W53'), say.scrapped('W53'))).toEqual([
      'refused scrapped',
      'refused scrapped',
      'refused scrapped',
    ]);
    await mustSend(say.separated('P53', 'W53'));
  });
});
