import type { CopyRows } from '@/lib/data/rebuild/copy-rows';
import type { Arrived, Subject, SubjectKind } from '@/lib/data/rebuild/read-subjects';
import { ownRowsOf } from '@/lib/data/record/own-rows';
import { containerRow } from '@/lib/data/record/refresh-container';
import { itemRow } from '@/lib/data/record/refresh-item';
import { unitRow } from '@/lib/data/record/unit-rows';
import type { Row } from '@/lib/data/rows';
import { doubtUs, type LoggedEvent } from '@/lib/domain/events/logged-event';
import { changesSlot, touchedBy } from '@/lib/domain/events/touched';
import type { Plant } from '@/lib/domain/plant/plant';
import { foldUnit } from '@/lib/domain/units/fold-unit';

/** Most doubtful change at a slot. */
export type SlotDoubt = { station: string; slot: string; us: number };

/**
 * Makes the rows of subjects from their events: those that each event owns, and the subject's folded state. An event
 * that was voided before it came leaves no trace; one that was voided later made its unit, its containers and its
 * slot's doubt known.
 */
export class LoadSubjects {
  /** Failing results that used up the attempts of their step. */
  readonly exhausted: string[] = [];
  readonly containers = new Set<string>();
  readonly shipped: string[] = [];
  readonly joined = new Set<string>();
  readonly slotDoubts = new Map<string, SlotDoubt>();
  readonly #rows: CopyRows;
  readonly #plant: Plant;
  readonly #voidedAt: ReadonlyMap<string, number>;

  /** `voidedAt`: by event, the position of the first void that names it. */
  constructor(options: { rows: CopyRows; plant: Plant; voidedAt: ReadonlyMap<string, number> }) {
    this.#rows = options.rows;
    this.#plant = options.plant;
    this.#voidedAt = options.voidedAt;
  }

  async load(kind: SubjectKind, { subject, arrived }: Subject): Promise<void> {
    const noticed = arrived.filter((each) => !this.#cameVoided(each)).map(({ event }) => event);
    const counting = noticed.filter(({ id }) => !this.#voidedAt.has(id));
    for (const event of noticed) this.#notice(event);
    for (const { table, columns, rows } of ownRowsOf(counting))
      await this.#rows.add(
        table,
        columns.map(({ name }) => name),
        rows,
      );
    const folded = this.#fold(kind, { subject, noticed, counting });
    if (folded !== null) await this.#rows.add(`read.${kind}`, Object.keys(folded), [folded]);
  }

  #cameVoided({ event, position }: Arrived): boolean {
    return (this.#voidedAt.get(event.id) ?? Number.POSITIVE_INFINITY) < position;
  }

  #notice(event: LoggedEvent): void {
    const { containers, mentioned, joining } = touchedBy(event);
    for (const container of [...containers, ...mentioned]) this.containers.add(container);
    if (joining !== null) this.joined.add(joining.inner);
    if (!changesSlot(event)) return;
    const { station, body } = event;
    const key = JSON.stringify([station, body.slot]);
    const us = Math.max(doubtUs(event), this.slotDoubts.get(key)?.us ?? 0);
    this.slotDoubts.set(key, { station, slot: body.slot, us });
  }

  #fold(
    kind: SubjectKind,
    { subject, noticed, counting }: { subject: string; noticed: LoggedEvent[]; counting: LoggedEvent[] },
  ): Row | null {
    if (noticed.length === 0) return null;
    switch (kind) {
      case 'unit': {
        const state = foldUnit(subject, counting, this.#plant);
        this.exhausted.push(...state.exhausted);
        return unitRow(subject, { state, last: counting.at(-1) ?? null }, this.#plant);
      }
      case 'item':
        return itemRow(subject, counting);
      case 'container': {
        const row = containerRow(subject, counting);
        if (row.own_shipment !== null) this.shipped.push(subject);
        return row;
      }
      default:
        return kind satisfies never;
    }
  }
}
