import { CERTAINTIES, RELATIONS } from '@/lib/domain/genealogy/answer';
import type {
  GenealogyEdge,
  GenealogyGraph,
  GenealogyNode,
  Side,
} from '@/lib/domain/genealogy/graph/genealogy-graph';
import type { UnitFacts } from '@/lib/domain/genealogy/graph/unit-facts';
import type { Plant } from '@/lib/domain/plant/plant';
import { instantOf } from '@/lib/domain/time';

/** What a picture is drawn from; `facts` is null for a unit whose record was not read. */
export type Ledger = { plant: Plant; facts(unit: string): UnitFacts | null };

/** `failed` is the id of an event whose result was a fail. */
type Work = { unit: string; station: string | null; at: string; failed: string | null };

/** A graph in the making: a node or an edge that is added twice is one, with the strongest of what both say. */
export class GraphDraft {
  readonly #nodes = new Map<string, GenealogyNode>();
  readonly #edges = new Map<string, GenealogyEdge>();
  readonly #failures = new Set<string>();
  /** Units that are in the picture but whose records are not known. */
  readonly unread = new Set<string>();
  readonly ledger: Ledger;

  constructor(ledger: Ledger) {
    this.ledger = ledger;
  }

  get graph(): GenealogyGraph {
    return { nodes: [...this.#nodes.values()], edges: [...this.#edges.values()] };
  }

  /** Adds a unit's node; gives its id and its record. */
  unit(side: Side, code: string): { id: string; facts: UnitFacts | null } {
    const facts = this.ledger.facts(code);
    const id = idOf(side, 'unit', code);
    if (facts === null) this.unread.add(code);
    const { product = null, revision = null, place = null } = facts ?? {};
    this.#add({
      id,
      side,
      kind: 'unit',
      code,
      product,
      revision,
      place,
      isFollowed: facts !== null,
      more: [],
    });
    return { id, facts };
  }

  /** Adds what was done to a unit at a station, or widens its time. */
  work({ unit, station, at, failed }: Work): string {
    const id = idOf('upstream', 'work', unit, ...(station === null ? [] : [station]));
    const known = this.#nodes.get(id);
    const isNewFailure = failed !== null && !this.#failures.has(failed);
    if (failed !== null) this.#failures.add(failed);
    if (known?.kind === 'work') {
      if (instantOf(at) < instantOf(known.from)) known.from = at;
      if (instantOf(at) > instantOf(known.to)) known.to = at;
      known.failed += Number(isNewFailure);
      return id;
    }
    const operation = station === null ? null : (this.ledger.plant.station(station)?.operation ?? null);
    const span = { from: at, to: at, failed: Number(isNewFailure) };
    this.#add({ id, side: 'upstream', kind: 'work', unit, station, operation, ...span, more: [] });
    return id;
  }

  item(node: Omit<GenealogyNode & { kind: 'item' }, 'id' | 'side' | 'kind' | 'more'>): string {
    const id = idOf('upstream', 'item', node.code);
    this.#add({ id, side: 'upstream', kind: 'item', ...node, more: [] });
    return id;
  }

  person(badge: string): string {
    const id = idOf('upstream', 'person', badge);
    const name = this.ledger.plant.operator(badge)?.name ?? null;
    this.#add({ id, side: 'upstream', kind: 'person', code: badge, name, more: [] });
    return id;
  }

  container(code: string): string {
    const id = idOf('downstream', 'container', code);
    this.#add({ id, side: 'downstream', kind: 'container', code, more: [] });
    return id;
  }

  shipment(code: string, customer: string): string {
    const id = idOf('downstream', 'shipment', code);
    this.#add({ id, side: 'downstream', kind: 'shipment', code, customer, more: [] });
    return id;
  }

  edge(edge: Pick<GenealogyEdge, 'from' | 'to' | 'link'> & Partial<GenealogyEdge>): void {
    const key = JSON.stringify([edge.from, edge.to, edge.link]);
    const full: GenealogyEdge = { relation: null, certainty: 'certain', positions: [], slots: [], ...edge };
    const known = this.#edges.get(key);
    this.#edges.set(key, known === undefined ? full : merged(known, full));
  }

  #add(node: GenealogyNode): void {
    if (!this.#nodes.has(node.id)) this.#nodes.set(node.id, node);
  }
}

function idOf(...words: string[]): string {
  return words.map(encodeURIComponent).join('/');
}

function merged(a: GenealogyEdge, b: GenealogyEdge): GenealogyEdge {
  return {
    ...a,
    relation: RELATIONS.find((relation) => a.relation === relation || b.relation === relation) ?? null,
    certainty: CERTAINTIES.find((each) => a.certainty === each || b.certainty === each) ?? 'possible',
    positions: [...new Set([...a.positions, ...b.positions])],
    slots: [...new Set([...a.slots, ...b.slots])],
  };
}
