import { describe, expect, it } from 'vitest';
import { advancePackDesk } from '@/lib/domain/packing/desk/advance-pack-desk';
import {
  NEW_PACK_DESK,
  type PackDesk,
  type PackEffect,
  type PackInput,
} from '@/lib/domain/packing/desk/pack-desk';
import type { ScanPicture } from '@/lib/domain/station/scan-picture';
import { itemOf, scanOf, unitOf } from '@/tests/support/station-run';

class Run {
  state: PackDesk = NEW_PACK_DESK;
  readonly effects: PackEffect[] = [];

  give(input: PackInput): this {
    const step = advancePackDesk(this.state, input);
    this.state = step.state;
    this.effects.push(...step.effects);
    return this;
  }

  /** Scans a code and has it named at once. */
  scan(code: string, names: Partial<ScanPicture> = {}): this {
    this.give({ kind: 'scanned', code });
    return this.give({ kind: 'identified', code, scan: scanOf(code, names) });
  }

  unit(code: string): this {
    return this.scan(code, { unit: unitOf(code) });
  }

  settle(): this {
    return this.give({ kind: 'settled', reasons: null });
  }

  get recorded() {
    return this.effects.flatMap((effect) => (effect.kind === 'record' ? [effect.draft] : []));
  }
}

const packed = (unit: string, container: string) => ({ type: 'unit.packed', body: { unit, container } });
const KNOWN = (container: string) => ({ container: { container, shipment: null } });
const NEW = { isContainerLike: true };

describe('packing', () => {
  it('pairs a unit and the container that is scanned behind it, known or not', () => {
    for (const names of [KNOWN('CT-1'), NEW]) {
      const run = new Run().unit('U-1').scan('CT-1', names);
      expect(run.recorded).toEqual([packed('U-1', 'CT-1')]);
      expect(run.settle().state).toMatchObject({ container: 'CT-1', done: { what: 'packed' } });
    }
  });

  it('keeps the container open, and each unit goes into it', () => {
    const run = new Run().scan('CT-1', KNOWN('CT-1')).unit('U-1').settle().unit('U-2').settle();
    expect(run.recorded).toEqual([packed('U-1', 'CT-1'), packed('U-2', 'CT-1')]);
  });

  it('takes a second scan of a unit that is in the open container for what it is', () => {
    const place = { kind: 'container' as const, container: 'CT-1' };
    const run = new Run().scan('CT-1', KNOWN('CT-1')).unit('U-1').settle();
    run.scan('U-1', { unit: unitOf('U-1', { place }) });
    expect(run.recorded).toEqual([packed('U-1', 'CT-1')]);
    expect(run.state).toMatchObject({ notice: { code: 'already_here', scanned: 'U-1' }, stop: null });
  });

  it('names what a unit lacks and what is on hold inside it, and packs it all the same', () => {
    const cautions = [
      { what: 'empty_position' as const, position: 'C14' },
      { what: 'held_inside' as const, kind: 'lot' as const, id: 'LOT-9', reason: 'cracks' },
    ];
    const run = new Run().scan('CT-1', KNOWN('CT-1')).scan('U-1', { unit: unitOf('U-1', { cautions }) });
    expect(run.state.caution).toEqual({ unit: 'U-1', cautions });
    expect(run.recorded).toEqual([packed('U-1', 'CT-1')]);
    expect(run.settle().unit('U-2').state.caution).toBeNull();
  });

  it('keeps a caution while its unit waits for its container, and until it is in', () => {
    const cautions = [{ what: 'empty_position' as const, position: 'C14' }];
    const wait = () => new Run().scan('U-1', { unit: unitOf('U-1', { cautions }) });
    const run = wait().scan('CT-1', KNOWN('CT-1')).settle();
    expect(run.state).toMatchObject({ done: { what: 'packed' }, caution: { unit: 'U-1', cautions } });
    expect(run.unit('U-2').state.caution).toBeNull();
    expect(wait().give({ kind: 'put_aside' }).state.caution).toBeNull();
  });

  it('says of a label what it is', () => {
    const label = { kind: 'badge' as const, badge: 'op-1' };
    expect(new Run().scan('op-1', { label }).state.notice).toMatchObject({ code: 'is_label', label });
  });

  it('packs every unit that was scanned before the container', () => {
    const run = new Run().unit('U-1').unit('U-2').unit('U-2').scan('CT-1', NEW).settle();
    run.give({ kind: 'identified', code: 'U-2', scan: scanOf('U-2', { unit: unitOf('U-2') }) });
    expect(run.recorded).toEqual([packed('U-1', 'CT-1'), packed('U-2', 'CT-1')]);
  });

  it('asks before it opens a carton that nobody knows, unless it looks like the open one', () => {
    const run = new Run().scan('CT-1');
    expect(run.state).toMatchObject({ container: null, notice: { code: 'unknown' } });
    run.give({ kind: 'opened', container: 'CT-1' }).scan('CT-2');
    expect(run.state).toMatchObject({ container: 'CT-2', notice: null });
    expect(run.scan('PALLET').state).toMatchObject({ container: 'CT-2', notice: { code: 'unknown' } });
  });

  it('asks about a code that looks like no container before a waiting unit goes into it', () => {
    const run = new Run().unit('U-1').scan('BARCODE-OF-SOMETHING');
    expect(run.recorded).toEqual([]);
    expect(run.state).toMatchObject({ units: ['U-1'], notice: { code: 'unknown' } });
    expect(run.give({ kind: 'forgot' }).state).toMatchObject({ units: ['U-1'], notice: null });
    run.scan('BOX-1').give({ kind: 'opened', container: 'BOX-1' });
    expect(run.recorded).toEqual([packed('U-1', 'BOX-1')]);
    expect(run.settle().state.done).not.toHaveProperty('isNew');
  });

  it('says once that a container is new, and takes it back', () => {
    const run = new Run().scan('CT-19', NEW).unit('U-1').settle();
    expect(run.state.done).toEqual({ what: 'packed', unit: 'U-1', container: 'CT-19', isNew: true });
    expect(run.unit('U-2').settle().state.done).not.toHaveProperty('isNew');
    expect(run.give({ kind: 'undone' }).recorded).toHaveLength(2);

    const wrong = new Run().unit('U-1').scan('CT-91', NEW).settle().give({ kind: 'undone' });
    expect(wrong.recorded.at(-1)).toEqual({
      type: 'unit.unpacked',
      body: { unit: 'U-1', container: 'CT-91' },
    });
    expect(wrong.settle().state).toMatchObject({ container: null, done: { what: 'unpacked' } });
  });

  it('asks about a pallet that looks like none, and takes a new one back', () => {
    const nesting = () => new Run().scan('CT-1', KNOWN('CT-1')).give({ kind: 'mode', mode: 'nest' });
    const run = nesting().scan('WHATEVER');
    expect(run.state).toMatchObject({ notice: { code: 'unknown_outer' } });
    run.give({ kind: 'nested_in_new', into: 'WHATEVER' });
    expect(run.recorded).toEqual([
      { type: 'container.nested', body: { container: 'CT-1', into: 'WHATEVER' } },
    ]);
    const undone = nesting().scan('PAL-2', NEW).settle().give({ kind: 'undone' });
    expect(undone.recorded.at(-1)).toEqual({
      type: 'container.unnested',
      body: { container: 'CT-1', from: 'PAL-2' },
    });
    expect(undone.settle().state).toMatchObject({ container: 'CT-1' });
  });

  it('takes a code that looks like a serial for a unit, so that the gate says that it is unknown', () => {
    const run = new Run().scan('CT-1', KNOWN('CT-1'));
    run.scan('WX4C9', { serialOf: [{ product: 'WX4', revision: 'C' }] });
    expect(run.recorded).toEqual([packed('WX4C9', 'CT-1')]);
  });

  it('lets a refusal stand, and says what was scanned behind it', () => {
    const run = new Run().scan('CT-1', KNOWN('CT-1')).unit('U-1').give({ kind: 'scanned', code: 'U-2' });
    run.give({ kind: 'settled', reasons: [{ code: 'unsigned', unit: 'U-1' }] });
    expect(run.state).toMatchObject({
      stop: { about: { unit: 'U-1' } },
      notice: { code: 'other_unit_waits', scanned: 'U-2' },
      held: [],
    });
  });

  it('takes units out, nests and ships', () => {
    const run = new Run().scan('CT-1', KNOWN('CT-1')).give({ kind: 'took_out', unit: 'U-1' }).settle();
    run.give({ kind: 'mode', mode: 'take_out' });
    run.scan('U-2', { unit: unitOf('U-2', { place: { kind: 'container', container: 'CT-7' } }) }).settle();
    run.give({ kind: 'mode', mode: 'nest' }).scan('PAL-1', NEW).settle();
    run.give({ kind: 'opened', container: 'PAL-1' });
    run.give({ kind: 'took_container_out', container: 'CT-1' }).settle();
    run.give({ kind: 'ship', shipment: 'SH-1', customer: 'Northgate Rail', destination: '' }).settle();
    expect(run.recorded).toEqual([
      { type: 'unit.unpacked', body: { unit: 'U-1', container: 'CT-1' } },
      { type: 'unit.unpacked', body: { unit: 'U-2', container: 'CT-7' } },
      { type: 'container.nested', body: { container: 'CT-1', into: 'PAL-1' } },
      { type: 'container.unnested', body: { container: 'CT-1', from: 'PAL-1' } },
      {
        type: 'container.shipped',
        body: { container: 'PAL-1', shipment: 'SH-1', customer: 'Northgate Rail' },
      },
    ]);
    expect(run.state.container).toBeNull();
  });

  it('refuses an item, a missing answer and a pallet that is none', () => {
    const run = new Run().scan('R-1', { item: itemOf('R-1', 'P') });
    expect(run.state.notice).toMatchObject({ code: 'is_item' });
    run.give({ kind: 'scanned', code: 'Z' }).give({ kind: 'identified', code: 'Z', scan: null });
    expect(run.state.notice).toMatchObject({ code: 'unanswered' });
    run.scan('CT-1', KNOWN('CT-1')).give({ kind: 'mode', mode: 'nest' }).unit('U-1');
    expect(run.state.notice).toMatchObject({ code: 'no_container' });
    run.give({ kind: 'mode', mode: 'take_out' }).scan('NOBODY');
    expect(run.state.notice).toMatchObject({ code: 'not_packed' });
    expect(run.recorded).toEqual([]);
  });
});
