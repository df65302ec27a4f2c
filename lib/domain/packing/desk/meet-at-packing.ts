import type { PackDesk, PackNotice, PackStep } from '@/lib/domain/packing/desk/pack-desk';
import { nestInto, packStep, packWaiting, putIn, sendDone } from '@/lib/domain/packing/desk/pack-step';
import type { ScanPicture } from '@/lib/domain/station/scan-picture';

/** What a scanned code means at packing, now that it is known what it names. */
export function meetAtPacking(state: PackDesk, code: string, scan: ScanPicture | null): PackStep {
  if (scan === null) return complain(state, { code: 'unanswered', scanned: code }, 'attention');
  if (scan.label !== null && scan.serialOf.length === 0)
    return complain(state, { code: 'is_label', scanned: code, label: scan.label }, 'attention');
  const isUnit = scan.unit !== null || scan.serialOf.length > 0;
  switch (state.mode) {
    case 'pack':
      return isUnit ? packUnit(state, code, scan.unit) : packInto(state, code, scan);
    case 'take_out':
      return takeOut(state, code, scan);
    case 'nest':
      return isUnit || scan.item !== null
        ? complain(state, { code: 'no_container', scanned: code }, 'stop')
        : nest(state, code, scan);
    default:
      return state.mode satisfies never;
  }
}

function complain(state: PackDesk, notice: PackNotice, signal: 'stop' | 'attention'): PackStep {
  return packStep({ ...state, notice }, { kind: 'signal', signal });
}

function packUnit(before: PackDesk, unit: string, picture: ScanPicture['unit']): PackStep {
  const { container } = before;
  const place = picture?.place ?? null;
  if (container !== null && place?.kind === 'container' && place.container === container)
    return complain(before, { code: 'already_here', scanned: unit }, 'attention');
  const cautions = picture?.cautions ?? [];
  const state = cautions.length === 0 ? before : { ...before, caution: { unit, cautions } };
  if (container === null) {
    const units = state.units.includes(unit) ? state.units : [...state.units, unit];
    const signal = cautions.length === 0 ? ('done' as const) : ('attention' as const);
    return packStep({ ...state, units }, { kind: 'signal', signal });
  }
  return putIn(state, unit, container);
}

/** A container is known, or looks like one; whatever else nobody knows is asked about before it becomes one. */
function packInto(state: PackDesk, container: string, scan: ScanPicture): PackStep {
  if (scan.item !== null) return complain(state, { code: 'is_item', scanned: container }, 'stop');
  const isNew = scan.container === null;
  if (isNew && !scan.isContainerLike && !looksLike(container, state.container))
    return complain(state, { code: 'unknown', scanned: container }, 'attention');
  if (state.units.length > 0) return packWaiting({ ...state, isNew }, container);
  return packStep({ ...state, container, isNew }, { kind: 'signal', signal: isNew ? 'attention' : 'done' });
}

/** A code that differs from the open container's in its digits only is the next container of its kind. */
function looksLike(code: string, container: string | null): boolean {
  const shapeOf = (text: string): string => text.replaceAll(/\d/g, '0');
  return container !== null && shapeOf(code) === shapeOf(container);
}

function takeOut(state: PackDesk, code: string, scan: ScanPicture): PackStep {
  const place = scan.unit?.place ?? null;
  const container =
    place?.kind === 'container' || place?.kind === 'shipped' ? place.container : state.container;
  if (scan.unit === null || container === null)
    return complain(state, { code: 'not_packed', scanned: code }, 'stop');
  const body = { unit: code, container };
  return sendDone(state, { what: 'unpacked', ...body }, { type: 'unit.unpacked', body });
}

/** Around the open container goes another one: a new one is asked about like any other, and opened by its own name. */
function nest(state: PackDesk, into: string, scan: ScanPicture): PackStep {
  const { container } = state;
  if (container === null || into === container)
    return complain(state, { code: 'no_container', scanned: into }, 'stop');
  const isNew = scan.container === null;
  if (isNew && !scan.isContainerLike)
    return complain(state, { code: 'unknown_outer', scanned: into }, 'attention');
  return nestInto(state, { container, into, isNew });
}
