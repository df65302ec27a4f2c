type Entry = { atMs: number; order: number; act: () => void };

/** What is to happen, and the clock that goes from one thing to the next; equal times keep the order of asking. */
export class Agenda {
  #nowMs: number;
  #asked = 0;
  readonly #heap: Entry[] = [];

  constructor(startMs: number) {
    this.#nowMs = startMs;
  }

  /** The simulated time, in milliseconds since the epoch. */
  get nowMs(): number {
    return this.#nowMs;
  }

  /** Asks for something at a time that is not past. */
  at(atMs: number, act: () => void): void {
    if (atMs < this.#nowMs) throw new Error('The demo asked for something in its own past.');
    this.#asked += 1;
    this.#push({ atMs: Math.round(atMs), order: this.#asked, act });
  }

  /** Asks for something after a delay in milliseconds. */
  after(delayMs: number, act: () => void): void {
    this.at(this.#nowMs + delayMs, act);
  }

  /** Lets everything happen that is due until a time, included. */
  runUntil(endMs: number): void {
    for (let next = this.#heap[0]; next !== undefined && next.atMs <= endMs; next = this.#heap[0]) {
      this.#pop();
      this.#nowMs = next.atMs;
      next.act();
    }
    this.#nowMs = endMs;
  }

  #push(entry: Entry): void {
    const heap = this.#heap;
    heap.push(entry);
    let index = heap.length - 1;
    while (index > 0) {
      const above = (index - 1) >> 1;
      const parent = heap[above];
      if (parent === undefined || isBefore(parent, entry)) break;
      heap[index] = parent;
      heap[above] = entry;
      index = above;
    }
  }

  #pop(): void {
    const heap = this.#heap;
    const last = heap.pop();
    if (last === undefined || heap.length === 0) return;
    heap[0] = last;
    for (let index = 0; ; ) {
      const [left, right] = [heap[2 * index + 1], heap[2 * index + 2]];
      if (left === undefined) return;
      const isRight = right !== undefined && isBefore(right, left);
      const child = isRight ? right : left;
      if (isBefore(last, child)) return;
      const below = 2 * index + (isRight ? 2 : 1);
      heap[index] = child;
      heap[below] = last;
      index = below;
    }
  }
}

function isBefore(a: Entry, b: Entry): boolean {
  return a.atMs < b.atMs || (a.atMs === b.atMs && a.order < b.order);
}
