import type { WireEvent } from '@/lib/domain/events/catalogue';
import type { Verdict } from '@/lib/domain/gate/question';
import { indexPlant, type Plant } from '@/lib/domain/plant/plant';
import { judgeProvisional } from '@/lib/domain/replica/judge-provisional';
import { replicaKnown } from '@/lib/domain/replica/replica-known';
import { replicaScan } from '@/lib/domain/replica/replica-pictures';
import { type ProductPicture, productPicture } from '@/lib/domain/station/product-picture';
import type { ScanPicture } from '@/lib/domain/station/scan-picture';
import type { StationPicture } from '@/lib/domain/station/station-picture';
import {
  openReplicaStore,
  type ReplicaMeta,
  readReplicaMeta,
  readReplicaPlant,
  readReplicaUnit,
} from '@/lib/offline/replica/replica-store';

const NO_ID = 'ffffffff-ffff-7fff-bfff-ffffffffffff';

/** What a tablet answers by itself about a unit. */
export type LocalAnswer = { answer: Verdict; scan: ScanPicture; product: ProductPicture | null };

/** Who asks about what, when, and what this device has recorded that the server has not acknowledged. */
export type LocalQuestion = { unit: string; operator: string; at: string; own: readonly WireEvent[] };

/** What the gate needs at one station, kept on this device and answered from without the server. */
export class StationReplica {
  readonly #station: string;
  #db: ReturnType<typeof openReplicaStore> | null = null;
  #meta: ReplicaMeta | null = null;
  #plant: { version: number; plant: Plant } | null = null;

  constructor(station: string) {
    this.#station = station;
  }

  /** Reads the plant before the first question, which would wait for it. */
  async warm(): Promise<void> {
    if (this.#plant === null) await this.#kept();
  }

  /** The station's picture as the server last gave it, for this person; null when nothing is kept. */
  async picture(badge: string): Promise<StationPicture | null> {
    const kept = await this.#kept();
    if (kept === null) return null;
    const { station } = kept.meta;
    const operations = kept.plant.operator(badge)?.operations ?? [];
    return { ...station, isQualified: operations.includes(station.station.operation) };
  }

  /** Judges a unit by what is kept; null when nothing is. */
  async ask({ unit, operator, at, own }: LocalQuestion): Promise<LocalAnswer | null> {
    const db = await this.#open();
    const [kept, found] = await Promise.all([this.#kept(), readReplicaUnit(db, this.#station, unit)]);
    if (kept === null) return null;
    const { meta, plant } = kept;
    const around = found?.outer ?? null;
    const outer = around === null ? null : await readReplicaUnit(db, this.#station, around);
    const known = replicaKnown({ plant, items: meta.items }, { unit, kept: found, outer, own });
    const withoutServer = plant.station(this.#station)?.withoutServer ?? 'flag';
    const answer = judgeProvisional(
      {
        id: NO_ID,
        type: 'unit.processed',
        at,
        station: this.#station,
        operator,
        body: { unit, result: 'pass' },
      },
      known,
      { asOfMs: meta.asOfMs, withoutServer },
    );
    const state = known.unit(unit);
    const product = state === null ? null : plant.product(state.product, state.revision);
    return {
      answer,
      scan: replicaScan(known, { code: unit, station: this.#station, kept: found }),
      product: product === null ? null : productPicture(product),
    };
  }

  #open(): ReturnType<typeof openReplicaStore> {
    this.#db ??= openReplicaStore();
    return this.#db;
  }

  /** Read each time, since another tab may have refreshed it; the plant once a version. */
  async #kept(): Promise<{ meta: ReplicaMeta; plant: Plant } | null> {
    const db = await this.#open();
    const meta = await readReplicaMeta(db, this.#station, this.#meta);
    this.#meta = meta;
    if (meta === null) return null;
    const version = meta.cursor.plant;
    if (this.#plant?.version !== version) {
      const file = await readReplicaPlant(db, this.#station);
      this.#plant = file === null ? null : { version, plant: indexPlant(file) };
    }
    return this.#plant === null ? null : { meta, plant: this.#plant.plant };
  }
}
