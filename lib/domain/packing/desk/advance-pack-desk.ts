import { meetAtPacking } from '@/lib/domain/packing/desk/meet-at-packing';
import type {
  PackDesk,
  PackDone,
  PackInput,
  PackNotice,
  PackStep,
} from '@/lib/domain/packing/desk/pack-desk';
import { nestInto, packStep, packWaiting, quiet, sendDone } from '@/lib/domain/packing/desk/pack-step';
import type { EventDraft } from '@/lib/domain/station/event-draft';

/**
 * The packing screen after an input. A unit and a container, scanned in either order, become one packing; while a
 * container is open each unit goes into it. What is scanned while the server is asked keeps its turn.
 */
export function advancePackDesk(state: PackDesk, input: PackInput): PackStep {
  const step = respond(state, input);
  const [code, ...held] = step.state.held;
  if (code === undefined || isBusy(step.state)) return step;
  const next = advancePackDesk({ ...step.state, held }, { kind: 'scanned', code });
  return { state: next.state, effects: [...step.effects, ...next.effects] };
}

/** A refusal must be seen before the next scan can take it away. */
function isBusy({ lookup, sending }: PackDesk): boolean {
  return lookup !== null || sending !== null;
}

function respond(state: PackDesk, input: PackInput): PackStep {
  switch (input.kind) {
    case 'scanned':
      if (isBusy(state)) return packStep({ ...state, held: [...state.held, input.code] });
      return packStep({ ...quiet(state), lookup: input.code }, { kind: 'identify', code: input.code });
    case 'identified':
      if (state.lookup !== input.code) return packStep(state);
      return meetAtPacking({ ...state, lookup: null }, input.code, input.scan);
    case 'settled':
      return onSettled(state, input.reasons);
    case 'opened':
      return isBusy(state) ? packStep(state) : open({ ...quiet(state), isNew: false }, input.container);
    case 'closed':
      return isBusy(state) ? packStep(state) : packStep({ ...quiet(state), container: null, mode: 'pack' });
    case 'mode':
      return isBusy(state) ? packStep(state) : packStep(quiet({ ...state, mode: input.mode, units: [] }));
    case 'put_aside':
      return packStep(quiet({ ...state, units: [] }));
    case 'forgot':
      return packStep(quiet(state));
    case 'undone':
      return isBusy(state) ? packStep(state) : undo(state);
    case 'nested_in_new': {
      const { container } = state;
      if (isBusy(state) || container === null) return packStep(state);
      return nestInto(quiet(state), { container, into: input.into, isNew: false });
    }
    default:
      return isBusy(state) ? packStep(state) : sendDone(quiet(state), ...factOf(state, input));
  }
}

function open(state: PackDesk, container: string): PackStep {
  const opened = { ...state, container, mode: 'pack' as const };
  return state.units.length === 0 ? packStep(opened) : packWaiting(opened, container);
}

/** Takes out what made a new container, and closes it: whatever was scanned is no carton. */
function undo(state: PackDesk): PackStep {
  const { done } = state;
  if (done === null || !('isNew' in done) || done.isNew !== true) return packStep(state);
  const closed = { ...quiet(state), container: null, isNew: false };
  if (done.what === 'packed')
    return sendDone(
      closed,
      ...factOf({ ...closed, container: done.container }, { kind: 'took_out', unit: done.unit }),
    );
  if (done.what !== 'nested') return packStep(state);
  return sendDone(
    { ...closed, container: done.container },
    ...factOf(
      { ...closed, container: done.other },
      { kind: 'took_container_out', container: done.container },
    ),
  );
}

type Fact = Extract<PackInput, { kind: 'took_out' | 'took_container_out' | 'ship' }>;

function factOf(state: PackDesk, input: Fact): [PackDone, EventDraft] {
  const container = state.container ?? '';
  switch (input.kind) {
    case 'took_out': {
      const body = { unit: input.unit, container };
      return [
        { what: 'unpacked', ...body },
        { type: 'unit.unpacked', body },
      ];
    }
    case 'took_container_out':
      return [
        { what: 'unnested', container: input.container, other: container },
        { type: 'container.unnested', body: { container: input.container, from: container } },
      ];
    case 'ship': {
      const { shipment, customer, destination } = input;
      return [
        { what: 'shipped', container, shipment },
        {
          type: 'container.shipped',
          body: { container, shipment, customer, ...(destination !== '' && { destination }) },
        },
      ];
    }
    default:
      return input satisfies never;
  }
}

function onSettled(state: PackDesk, reasons: Parameters<typeof stopped>[1] | null): PackStep {
  const { sending } = state;
  if (sending === null) return packStep(state);
  if (reasons !== null) return stopped({ ...state, sending: null }, reasons, sending);
  const isNew = sending.what === 'packed' ? false : state.isNew;
  const after: PackDesk = { ...state, sending: null, done: sending, isNew, mode: 'pack' };
  const isLeft = sending.what === 'shipped' || sending.what === 'nested';
  return packStep(isLeft ? { ...after, container: null } : after, { kind: 'signal', signal: 'go' });
}

/** What was scanned behind a refusal waits until the refusal was seen: it is told of, and not taken up. */
function stopped(
  state: PackDesk,
  reasons: NonNullable<PackDesk['stop']>['reasons'],
  about: PackDone,
): PackStep {
  const [next] = state.held;
  const notice: PackNotice | null =
    next === undefined ? null : { code: 'other_unit_waits', scanned: state.held.join(', ') };
  return packStep(
    { ...state, held: [], done: null, stop: { about, reasons }, notice },
    {
      kind: 'signal',
      signal: 'stop',
    },
  );
}
