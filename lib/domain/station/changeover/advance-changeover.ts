import type { RefusalCode } from '@/lib/domain/gate/refusals';
import type {
  Changeover,
  ChangeoverContext,
  ChangeoverEffect,
  ChangeoverInput,
  ChangeoverReturned,
  ChangeoverStep,
  Splice,
} from '@/lib/domain/station/changeover/changeover';
import { placesLeft } from '@/lib/domain/station/changeover/places-left';
import { readSlotLabel } from '@/lib/domain/station/changeover/slot-label';
import type { EventDraft } from '@/lib/domain/station/event-draft';
import type { ItemPicture, ScanPicture } from '@/lib/domain/station/scan-picture';
import { type SlotPicture, slotState } from '@/lib/domain/station/slot-picture';

/**
 * The changeover screen after an input. An item and a slot, scanned in either order, become one mount; what is scanned
 * while the server is asked keeps its turn.
 */
export function advanceChangeover(
  state: Changeover,
  input: ChangeoverInput,
  context: ChangeoverContext,
): ChangeoverStep {
  const step = respond(state, input, context);
  const [code, ...held] = step.state.held;
  if (code === undefined || isBusy(step.state)) return step;
  const next = advanceChangeover({ ...step.state, held }, { kind: 'scanned', code }, context);
  return { state: next.state, effects: [...step.effects, ...next.effects] };
}

function isBusy({ lookup, sending }: Changeover): boolean {
  return lookup !== null || sending !== null;
}

function respond(state: Changeover, input: ChangeoverInput, context: ChangeoverContext): ChangeoverStep {
  switch (input.kind) {
    case 'scanned':
      return isBusy(state)
        ? stay({ ...state, held: [...state.held, input.code] })
        : onScan(state, input.code, context);
    case 'identified':
      if (state.lookup !== input.code) return stay(state);
      return onIdentified({ ...state, lookup: null }, input.code, input.scan, context);
    case 'settled':
      return onSettled(state, input.reasons);
    case 'chose_slot':
      return isBusy(state) ? stay(state) : chooseSlot(quiet(state), input.slot, context);
    case 'splicing':
      return stay({ ...quiet(state), splice: input.splice });
    case 'took_out':
      return takeOut(state, input.slot, context);
    case 'counted':
      return count(state, input, context);
    case 'cleared':
      return stay({ ...quiet(state), item: null, splice: null, slot: null, returned: null, done: null });
    default:
      return input satisfies never;
  }
}

function stay(state: Changeover, ...effects: ChangeoverEffect[]): ChangeoverStep {
  return { state, effects };
}

function quiet(state: Changeover): Changeover {
  return { ...state, stop: null, notice: null, untaken: [] };
}

function onScan(before: Changeover, code: string, context: ChangeoverContext): ChangeoverStep {
  const state = quiet(before);
  const slots = context.slots.map((slot) => slot.name);
  const label = readSlotLabel(code, { station: context.station, slots, stations: context.stations });
  if (label === null) return stay({ ...state, lookup: code }, { kind: 'identify', code });
  if (label.station === context.station) return chooseSlot(state, label.slot, context);
  return stay(
    { ...state, notice: { code: 'other_station', scanned: code, station: label.station } },
    { kind: 'signal', signal: 'stop' },
  );
}

function chooseSlot(state: Changeover, slot: string, context: ChangeoverContext): ChangeoverStep {
  if (state.item !== null) return mount(state, { item: state.item, slot }, context);
  return stay({ ...state, slot: state.slot === slot ? null : slot, done: null });
}

function onIdentified(
  state: Changeover,
  code: string,
  scan: ScanPicture | null,
  context: ChangeoverContext,
): ChangeoverStep {
  if (scan?.item) {
    if (state.slot !== null) return mount(state, { item: scan.item, slot: state.slot }, context);
    return stay({ ...state, item: scan.item, done: null });
  }
  if (scan === null) return refuseScan(state, { notice: { code: 'unanswered', scanned: code } });
  if (scan.unit !== null || scan.serialOf.length > 0)
    return refuseScan(state, { notice: { code: 'is_unit', scanned: code } });
  if (scan.container !== null) return refuseScan(state, { notice: { code: 'is_container', scanned: code } });
  if (scan.label !== null)
    return refuseScan(state, { notice: { code: 'is_label', scanned: code, label: scan.label } });
  const reasons = [{ code: 'unknown_item' as const, item: code }];
  return refuseScan(state, { stop: { item: code, slot: state.slot, reasons } });
}

/**
 * What was scanned is no item. The hand is empty after it: the next slot must not get what was scanned before. What
 * was scanned behind it is told of and not taken, since nobody had seen the no-go.
 */
function refuseScan(state: Changeover, why: Pick<Partial<Changeover>, 'stop' | 'notice'>): ChangeoverStep {
  const signal = why.notice?.code === 'unanswered' ? 'attention' : 'stop';
  return stay(
    { ...state, ...why, item: null, splice: null, done: null, held: [], untaken: state.held },
    { kind: 'signal', signal },
  );
}

function mount(
  state: Changeover,
  { item, slot }: { item: ItemPicture; slot: string },
  { station, slots }: ChangeoverContext,
): ChangeoverStep {
  const { splice } = state;
  const target = slots.find((each) => each.name === slot);
  const standing = standingIn(target);
  const replaced = standing?.item === item.item ? null : standing;
  if (splice !== null && replaced === null)
    return stay(
      { ...state, slot: null, notice: { code: 'nothing_to_splice', scanned: slot } },
      { kind: 'signal', signal: 'stop' },
    );
  const left = target !== undefined && fits(target, item) ? placesLeft(item, { station, slot }) : [];
  const drafts: EventDraft[] = [
    ...left.map((place) => ({
      type: 'item.unmounted' as const,
      station: place.station,
      body: { item: item.item, slot: place.slot },
    })),
    splice === null || replaced === null
      ? { type: 'item.mounted', station, body: { item: item.item, slot } }
      : spliced(station, { from: replaced.item, to: item.item, slot }, splice),
  ];
  const sending =
    splice === null
      ? { done: { what: 'mounted' as const, item: item.item, slot, left }, replaced }
      : { done: { what: 'spliced' as const, item: item.item, slot, left }, replaced: null };
  return stay({ ...state, sending, done: null, returned: null }, { kind: 'record', drafts });
}

function standingIn(slot: SlotPicture | undefined): ChangeoverReturned | null {
  if (!slot?.item) return null;
  return { item: slot.item.item, slot: slot.name, knownQuantity: slot.item.quantity };
}

function spliced(
  station: string,
  reels: { from: string; to: string; slot: string },
  { greyUnits }: Splice,
): EventDraft {
  return { type: 'item.spliced', station, body: { ...reels, ...(greyUnits !== null && { greyUnits }) } };
}

/** Whether nothing known here speaks against the item in the slot: one that will be refused leaves no other place. */
function fits({ expected, holds }: SlotPicture, { item, ...facts }: ItemPicture): boolean {
  const standing = { item, ...facts, isHeld: facts.holds.length > 0, since: '', oldEnd: null };
  return slotState(expected, holds, standing) === 'ready';
}

function takeOut(state: Changeover, slot: string, { station, slots }: ChangeoverContext): ChangeoverStep {
  const replaced = standingIn(slots.find((each) => each.name === slot));
  if (isBusy(state) || replaced === null) return stay(state);
  const { item } = replaced;
  const sending = { done: { what: 'unmounted' as const, item, slot }, replaced };
  const draft = { type: 'item.unmounted' as const, station, body: { item, slot } };
  return stay({ ...quiet(state), sending, done: null, returned: null }, { kind: 'record', drafts: [draft] });
}

function count(
  state: Changeover,
  { quantity, method }: { quantity: number; method: string },
  { station }: ChangeoverContext,
): ChangeoverStep {
  const { returned } = state;
  if (isBusy(state) || returned === null) return stay(state);
  const { item, slot } = returned;
  const sending = { done: { what: 'counted' as const, item, slot, quantity }, replaced: null };
  const body = { item, quantity, method };
  return stay(
    { ...quiet(state), sending, done: null },
    {
      kind: 'record',
      drafts: [{ type: 'item.counted', station, body }],
    },
  );
}

function onSettled(state: Changeover, reasons: ChangeoverStop | null): ChangeoverStep {
  const { sending } = state;
  if (sending === null) return stay(state);
  const { done, replaced } = sending;
  const after = { ...state, sending: null, slot: null };
  if (reasons !== null)
    return stay(
      {
        ...after,
        // When only the slot was wrong, the item stays in the hand: the right slot may be scanned next.
        ...(reasons.every(({ code }) => SLOT_FAULTS.has(code)) ? {} : { item: null, splice: null }),
        stop: { item: done.item, slot: done.slot, reasons },
        held: [],
        untaken: state.held,
      },
      { kind: 'signal', signal: 'stop' },
    );
  return stay(
    { ...after, item: null, splice: null, done, returned: replaced },
    { kind: 'signal', signal: 'go' },
  );
}

/** Refusals that another slot may not give. */
const SLOT_FAULTS: ReadonlySet<RefusalCode> = new Set(['wrong_part', 'wrong_kind', 'unknown_slot']);

type ChangeoverStop = NonNullable<Changeover['stop']>['reasons'];
