import type { Refusal } from '@/lib/domain/gate/refusals';
import { may as mayDo } from '@/lib/domain/people/permissions';
import type { Role } from '@/lib/domain/people/roles';
import type { ProductPicture } from '@/lib/domain/station/product-picture';
import type { ItemPicture, ScanPicture, UnitPicture } from '@/lib/domain/station/scan-picture';
import { advanceSession } from '@/lib/domain/station/session/advance-session';
import { NEW_SESSION, type Session, type Task } from '@/lib/domain/station/session/session';
import type {
  Press,
  SessionContext,
  SessionEffect,
  SessionInput,
} from '@/lib/domain/station/session/session-input';
import type { StationPicture } from '@/lib/domain/station/station-picture';

/** A product with a scanned part, a slot part and a sub-assembly. */
export const PRODUCT: ProductPicture = {
  product: 'WX4',
  revision: 'C',
  lines: [
    { part: 'C-100N', inner: null, positions: ['C1', 'C2'], station: 'S-1', slot: '1' },
    { part: 'J-TB8', inner: null, positions: ['J1', 'J2'], station: null, slot: null },
    { part: null, inner: 'PSU2', positions: ['A1'], station: null, slot: null },
  ],
};

/** A station on the route, without habits. */
export const PICTURE: StationPicture = {
  station: { code: 'S-1', line: 'L1', operation: 'place', slotCount: 1 },
  isOnRoute: true,
  isQualified: true,
  products: [{ product: 'WX4', revision: 'C' }],
  slots: [],
  defects: [{ code: 'BRIDGE', count: 3 }],
  defectsElsewhere: [],
  fits: [],
  readings: [],
  joins: [],
  recent: [],
};

/** A started unit of `PRODUCT`, with what a test wants to differ. */
export function unitOf(unit: string, differs: Partial<UnitPicture> = {}): UnitPicture {
  return {
    unit,
    product: 'WX4',
    revision: 'C',
    place: null,
    outer: null,
    isSigned: false,
    isScrapped: false,
    next: { operation: 'place', step: 10 },
    steps: [],
    failure: null,
    fitted: [],
    open: [],
    joined: [],
    holds: [],
    signing: [],
    cautions: [],
    ...differs,
  };
}

/** A code that names what the test says, and nothing else. */
export function scanOf(code: string, names: Partial<ScanPicture> = {}): ScanPicture {
  return {
    code,
    unit: null,
    item: null,
    container: null,
    isContainerLike: false,
    label: null,
    isPart: false,
    serialOf: [],
    startable: [],
    ...names,
  };
}

/** A received item. */
export function itemOf(item: string, part: string | null, kind: ItemPicture['kind'] = 'lot'): ItemPicture {
  return {
    item,
    kind,
    part,
    lot: null,
    supplier: null,
    quantity: null,
    countedAt: null,
    inspected: null,
    isRetired: false,
    mounted: [],
    holds: [],
  };
}

/** Drives a session as a device would, with the answers that a test gives; remembers every effect. */
export class StationRun {
  session: Session = NEW_SESSION;
  readonly effects: SessionEffect[] = [];
  readonly #context: Omit<SessionContext, 'now'>;
  #inputMs = 1000;
  #clockMs = Date.parse('2026-03-02T08:00:00.000Z');

  constructor(options: { picture?: Partial<StationPicture>; role?: Role } = {}) {
    const principal = { kind: 'person', badge: 'p-1', role: options.role ?? 'operator' } as const;
    this.#context = {
      picture: { ...PICTURE, ...options.picture },
      may: (action) => mayDo(principal, action),
    };
  }

  get task(): Task {
    return this.session.task;
  }

  /** Kinds of what was recorded, in order. */
  get recorded(): { type: string; body: Record<string, unknown> }[] {
    return this.effects.flatMap((effect) =>
      effect.kind === 'record' ? [{ type: effect.draft.type, body: { ...effect.draft.body } }] : [],
    );
  }

  get signals(): string[] {
    return this.effects.flatMap((effect) => (effect.kind === 'signal' ? [effect.signal] : []));
  }

  /** Units and codes that were asked about, in order. */
  get asked(): string[] {
    return this.effects.flatMap((effect) => {
      if (effect.kind === 'ask') return [effect.unit];
      return effect.kind === 'identify' ? [effect.code] : [];
    });
  }

  /** Time passes; every input takes a second of its own unless `hurry` says otherwise. */
  hurry(ms: number): this {
    this.#inputMs = ms;
    return this;
  }

  give(input: SessionInput): this {
    this.#clockMs += this.#inputMs;
    const now = new Date(this.#clockMs).toISOString();
    const step = advanceSession(this.session, input, { ...this.#context, now });
    this.session = step.session;
    this.effects.push(...step.effects);
    return this;
  }

  scan(code: string): this {
    return this.give({ kind: 'scanned', code });
  }

  press(press: Press): this {
    return this.give({ kind: 'pressed', press });
  }

  /** The server says go about a unit. */
  go(unit: string, differs: Partial<UnitPicture> = {}): this {
    const scan = scanOf(unit, { unit: unitOf(unit, differs) });
    return this.give({
      kind: 'answered',
      unit,
      answer: { go: true, reasons: [], next: null },
      scan,
      product: PRODUCT,
    });
  }

  /** The server says no-go about a unit. */
  stop(
    unit: string,
    reasons: Refusal[],
    scan: ScanPicture | null = scanOf(unit, { unit: unitOf(unit) }),
  ): this {
    return this.give({
      kind: 'answered',
      unit,
      answer: { go: false, reasons, next: null },
      scan,
      product: PRODUCT,
    });
  }

  /** The server says what a code is. */
  identify(code: string, scan: ScanPicture | null): this {
    return this.give({ kind: 'identified', code, scan });
  }

  /** The server answers the last event. */
  settle(isRecorded = true): this {
    return this.give({ kind: 'settled', tag: this.session.nextTag - 1, isRecorded });
  }
}
