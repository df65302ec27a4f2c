import { expect, it } from 'vitest';
import { whereUsedQuestionSchema } from '@/lib/domain/genealogy/question';
import { asBuilt } from '@/lib/server/as-built';
import { checkUnit } from '@/lib/server/check-unit';
import { putPlant } from '@/lib/server/put-plant';
import { whereUsed } from '@/lib/server/where-used';
import { eventMaker } from '@/tests/support/event-maker';
import { freshDatabase } from '@/tests/support/fresh-database';
import { recordHistory } from '@/tests/support/record-history';

freshDatabase();

const PLANT = {
  stations: [{ code: 'PLACE', operation: 'place', slots: [{ name: 'F1', holds: 'reel' }] }],
  products: [
    {
      number: 'WX4',
      revision: 'C',
      route: [{ step: 10, operation: 'place' }],
      bom: [{ part: 'C-100N', positions: ['C1'], station: 'PLACE', slot: 'F1' }],
    },
    { number: 'BARE', revision: 'A', route: [{ step: 10, operation: 'place' }] },
  ],
};

const say = eventMaker();
const at = (minute: number) => ({ at: say.minute(minute) });
const reel = (item: string) =>
  say.make('item.received', { item, kind: 'reel', part: 'C-100N' }, { at: say.minute(0) });
const unit = (serial: string, product = 'WX4') =>
  say.started({ unit: serial, product, revision: product === 'WX4' ? 'C' : 'A' }, { at: say.minute(0) });

/** Unit → certainty, with its reason where it is only possible. */
async function usersOf(item: string): Promise<Record<string, string>> {
  const { units } = await whereUsed(whereUsedQuestionSchema.parse({ item }));
  return Object.fromEntries(
    units.map(({ unit: serial, certainty, because }) => [serial, [certainty, ...(because ?? [])].join(' ')]),
  );
}

/** The same, asked of each unit's as-built record. */
async function usedBy(units: readonly string[], item: string): Promise<Record<string, string>> {
  const found: Record<string, string> = {};
  for (const serial of units)
    for (const draw of (await asBuilt(serial))?.draws ?? [])
      if (draw.item === item) found[serial] = [draw.certainty, ...(draw.because ?? [])].join(' ');
  return found;
}

async function expectUsers(units: readonly string[], expected: Record<string, Record<string, string>>) {
  for (const [item, users] of Object.entries(expected)) {
    expect(await usersOf(item), item).toEqual(users);
    expect(await usedBy(units, item), item).toEqual(users);
  }
}

it('while the grey zone is not used up, units belong to both reels', async () => {
  // Source of the rule: IPC-2591 (CFX), worked table of a spliced reel, as read in shared/checks.md; serials are ours.
  expect(await putPlant(PLANT, 'test')).toMatchObject({ ok: true });
  const units = ['U1', 'U2', 'U3', 'U4', 'U5'];
  await recordHistory([
    ...['A', 'B'].map(reel),
    ...units.map((serial) => unit(serial)),
    unit('X1', 'BARE'),
    say.mounted('A', 'PLACE', 'F1', at(1)),
    say.passed('U1', 'PLACE', at(2)),
    say.passed('U2', 'PLACE', at(3)),
    say.spliced({ from: 'A', to: 'B', greyUnits: 2 }, 'PLACE', 'F1', at(4)),
    // A unit that draws nothing from the slot moves no tape.
    say.passed('X1', 'PLACE', at(5)),
    say.passed('U3', 'PLACE', at(6)),
    say.passed('U4', 'PLACE', at(7)),
    say.passed('U5', 'PLACE', at(8)),
  ]);
  await expectUsers([...units, 'X1'], {
    A: { U1: 'certain', U2: 'certain', U3: 'possible splice', U4: 'possible splice' },
    B: { U3: 'possible splice', U4: 'possible splice', U5: 'certain' },
  });
});

it('a late unit and a void move the end of the zone', async () => {
  const late = say.passed('L1', 'PLACE', { at: say.minute(5.5) });
  await recordHistory([unit('L1'), late]);
  await expectUsers(['U1', 'U2', 'U3', 'U4', 'U5', 'L1'], {
    A: { U1: 'certain', U2: 'certain', L1: 'possible splice', U3: 'possible splice' },
    B: { L1: 'possible splice', U3: 'possible splice', U4: 'certain', U5: 'certain' },
  });
  await recordHistory([say.make('event.voided', { event: late.id, reason: 'scanned twice' }, at(9))]);
  expect(await usersOf('A')).toEqual({
    U1: 'certain',
    U2: 'certain',
    U3: 'possible splice',
    U4: 'possible splice',
  });
});

it('a second splice in the zone leaves three reels possible, and a change of the slot ends it', async () => {
  expect(await putPlant(PLANT, 'test')).toMatchObject({ ok: true });
  const units = ['V1', 'V2', 'V3', 'V4'];
  await recordHistory([
    ...['D', 'E', 'F', 'G'].map(reel),
    ...units.map((serial) => unit(serial)),
    say.mounted('D', 'PLACE', 'F1', at(20)),
    say.spliced({ from: 'D', to: 'E', greyUnits: 3 }, 'PLACE', 'F1', at(21)),
    say.passed('V1', 'PLACE', at(22)),
    say.spliced({ from: 'E', to: 'F', greyUnits: 3 }, 'PLACE', 'F1', at(23)),
    say.passed('V2', 'PLACE', at(24)),
    say.passed('V3', 'PLACE', at(25)),
    say.mounted('G', 'PLACE', 'F1', at(26)),
    say.passed('V4', 'PLACE', at(27)),
  ]);
  await expectUsers(units, {
    D: { V1: 'possible splice', V2: 'possible splice', V3: 'possible splice' },
    E: { V1: 'possible splice', V2: 'possible splice', V3: 'possible splice' },
    F: { V2: 'possible splice', V3: 'possible splice' },
    G: { V4: 'certain' },
  });
});

it('a zone of unknown length lasts until the slot changes again; one of no units is only the doubt of the clock', async () => {
  const units = ['W1', 'W2', 'W3'];
  await recordHistory([
    ...['H', 'I', 'J'].map(reel),
    ...units.map((serial) => unit(serial)),
    say.mounted('H', 'PLACE', 'F1', at(30)),
    say.spliced({ from: 'H', to: 'I' }, 'PLACE', 'F1', at(31)),
    say.passed('W1', 'PLACE', at(32)),
    say.spliced({ from: 'I', to: 'J', greyUnits: 0 }, 'PLACE', 'F1', at(33)),
    say.passed('W2', 'PLACE', at(34)),
    say.passed('W3', 'PLACE', { at: say.minute(33.5), uncertaintyMs: 60_000 }),
  ]);
  await expectUsers(units, {
    H: { W1: 'possible splice', W3: 'possible splice' },
    I: { W1: 'possible splice', W3: 'possible splice' },
    J: { W2: 'certain', W3: 'possible clock' },
  });
});

it('a held reel stops the next unit while its tape may still be fed', async () => {
  await recordHistory([
    ...['K', 'L'].map(reel),
    ...['Y1', 'Y2'].map((serial) => unit(serial)),
    say.mounted('K', 'PLACE', 'F1', at(40)),
    say.spliced({ from: 'K', to: 'L', greyUnits: 1 }, 'PLACE', 'F1', at(41)),
    say.make('hold.placed', { target: { kind: 'item', id: 'K' }, reason: 'cracks' }, at(42)),
  ]);
  const stopped = await checkUnit({ unit: 'Y1', station: 'PLACE' });
  expect(stopped.reasons).toMatchObject([{ code: 'on_hold', item: 'K' }]);
  await recordHistory([say.passed('Y1', 'PLACE', { ...at(43), gate: 'record' })]);
  expect(await checkUnit({ unit: 'Y2', station: 'PLACE' })).toMatchObject({ go: true });
});
