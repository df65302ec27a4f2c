import type { DemoUnit } from '@/scripts/demo/simulation/unit';
import type { World } from '@/scripts/demo/simulation/world';

/** How a station works. */
export type WorkCentreOptions<Job> = {
  world: World;
  /** Boards of a job. */
  unitsOf: (job: Job) => readonly DemoUnit[];
  /** Prepares a job and says how long it takes, in milliseconds. */
  begin: (job: Job) => number;
  /** Records the result and sends the job on. */
  finish: (job: Job) => void;
  /** Jobs worked on at once; default 1. */
  servers?: number;
  /** Works through the night; default no. */
  isAlwaysOpen?: boolean;
};

/** A station with its queue: takes jobs in the order of arrival; a held board waits aside until its hold is released. */
export class WorkCentre<Job> {
  readonly #options: WorkCentreOptions<Job>;
  readonly #queue: Job[] = [];
  #busy = 0;
  #isWakeAsked = false;

  constructor(options: WorkCentreOptions<Job>) {
    this.#options = options;
  }

  /** Jobs waiting and worked on. */
  get load(): number {
    return this.#queue.length + this.#busy;
  }

  get isIdle(): boolean {
    return this.#busy === 0;
  }

  push(job: Job): void {
    this.#queue.push(job);
    this.#work();
  }

  #work(): void {
    const { servers = 1 } = this.#options;
    while (this.#busy < servers && this.#queue.length > 0 && this.#isOpen()) {
      const job = this.#queue.shift();
      if (job === undefined) return;
      const held = this.#options.unitsOf(job).find((unit) => unit.heldBy !== null && !unit.isRecordedOnly);
      if (held === undefined) this.#begin(job);
      else held.goOn = () => this.push(job);
    }
  }

  #begin(job: Job): void {
    const { world, begin, finish, unitsOf } = this.#options;
    this.#busy += 1;
    for (const unit of unitsOf(job)) unit.isInService = true;
    world.agenda.after(begin(job), () => {
      this.#busy -= 1;
      for (const unit of unitsOf(job)) unit.isInService = false;
      finish(job);
      this.#work();
    });
  }

  #isOpen(): boolean {
    const { world, isAlwaysOpen = false } = this.#options;
    const { agenda, calendar } = world;
    if (isAlwaysOpen || calendar.isOpen(agenda.nowMs)) return true;
    const wakeMs = calendar.nextOpenMs(agenda.nowMs);
    if (!this.#isWakeAsked && wakeMs < Number.POSITIVE_INFINITY) {
      this.#isWakeAsked = true;
      agenda.at(wakeMs, () => {
        this.#isWakeAsked = false;
        this.#work();
      });
    }
    return false;
  }
}
