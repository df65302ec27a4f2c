import { type ProductCode, REVISIONS } from '@/scripts/demo/plant/products';
import type { LineCode } from '@/scripts/demo/plant/stations';

/** A board on its way through the plant. */
export type DemoUnit = {
  serial: string;
  product: ProductCode;
  line: LineCode;
  /** Fails in a row, by operation. */
  tries: Map<string, number>;
  /** The event that placed the hold it is under, or null. */
  heldBy: string | null;
  /** How it goes on when its hold is released; null while it waits nowhere. */
  goOn: (() => void) | null;
  isInService: boolean;
  /** Has left its placement line. */
  isOffLine: boolean;
  /** Came back from a customer; after its repair it stays in stock. */
  isReturned: boolean;
  isScrapped: boolean;
  /** The machines of its line send its passes under `gate: record` since a wrong reel stood there. */
  isRecordedOnly: boolean;
  /** Wear of the stencil it was printed with: 0 up to its limit, 1 at 400 prints beyond. */
  stencilWear: number;
  /** Whether it took its capacitor at C14 from the reel whose parts crack, and when that shows. */
  crack: 'none' | 'sound' | 'at-test' | 'in-the-field';
  /** The power supply inside. */
  psu: DemoUnit | null;
  carton: string | null;
  /** Whom it was shipped to, or null. */
  customer: string | null;
};

/** A panel of boards, or single ones that come back to a machine. */
export type Panel = { units: readonly DemoUnit[]; product: ProductCode; startedMs: number };

/** A board of which nothing has happened yet. */
export function newUnit(serial: string, product: ProductCode, line: LineCode): DemoUnit {
  return {
    serial,
    product,
    line,
    tries: new Map(),
    heldBy: null,
    goOn: null,
    isInService: false,
    isOffLine: false,
    isReturned: false,
    isScrapped: false,
    isRecordedOnly: false,
    stencilWear: 0,
    crack: 'none',
    psu: null,
    carton: null,
    customer: null,
  };
}

/** Serial of the n-th board of a product, as its serial pattern wants it. */
export function serialOf(product: ProductCode, number: number): string {
  return `${product}${REVISIONS[product]}${String(number).padStart(7, '0')}`;
}
