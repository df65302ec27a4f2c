import { DirectedGraph } from 'graphology';
import { bfsFromNode } from 'graphology-traversal';
import { describe, expect, it } from 'vitest';
import { type GenealogyAnswer, NODES_MAX } from '@/lib/domain/genealogy/graph/genealogy-graph';
import { putPlant } from '@/lib/server/put-plant';
import { readGenealogy } from '@/lib/server/read-genealogy';
import { batches, randomHistory, shuffle } from '@/tests/reference/model/random-history';
import { ReferenceModel } from '@/tests/reference/model/reference-model';
import { closeDatabase, openFreshDatabase } from '@/tests/support/fresh-database';
import { recordHistory } from '@/tests/support/record-history';

const SEED_FIRST = Number(process.env.REELKIN_SEED ?? 1);
const HISTORY_COUNT = Number(process.env.REELKIN_HISTORIES ?? 16);

/** The codes of one kind of node from which a general graph library finds its way along the edges to the unit. */
function reaching({ nodes, edges }: GenealogyAnswer, kind: 'item' | 'unit'): string[] {
  const against = new DirectedGraph();
  for (const node of nodes) against.addNode(node.id);
  for (const { from, to } of edges) against.mergeEdge(to, from);
  const found = new Set<string>();
  bfsFromNode(against, nodes[0]?.id, (id) => {
    found.add(id);
  });
  return nodes
    .flatMap((node) =>
      node.kind === kind && node.side === 'upstream' && found.has(node.id) ? [node.code] : [],
    )
    .sort();
}

/** The units that a general graph library reaches from the unit. */
function reached({ nodes, edges }: GenealogyAnswer): string[] {
  const along = new DirectedGraph();
  for (const node of nodes) along.addNode(node.id);
  for (const { from, to } of edges) along.mergeEdge(from, to);
  const found: string[] = [];
  const units = new Map(nodes.flatMap((node) => (node.kind === 'unit' ? [[node.id, node] as const] : [])));
  bfsFromNode(along, nodes[0]?.id, (id) => {
    const unit = units.get(id);
    if (unit?.side === 'downstream') found.push(unit.code);
  });
  return found.sort();
}

describe('a genealogy tells the same as where-used', () => {
  for (let seed = SEED_FIRST; seed < SEED_FIRST + HISTORY_COUNT; seed += 1)
    it(`history with seed ${seed}`, async () => {
      const fresh = await openFreshDatabase();
      const { plant, events } = randomHistory(seed);
      const model = new ReferenceModel(plant);
      expect(await putPlant(plant, 'test')).toMatchObject({ ok: true });
      for (const batch of batches(seed, shuffle(seed, events), { repeats: 0 }))
        await recordHistory(batch, 1000);
      for (const event of events) model.record(event);

      const units = [...new Set(events.flatMap(unitsOf))];
      const graphs = new Map<string, GenealogyAnswer>();
      for (const unit of units) {
        const graph = await readGenealogy({ unit, limit: NODES_MAX });
        if (graph !== null) graphs.set(unit, graph);
      }
      const graphOf = (unit: string) => graphs.get(unit) ?? expect.fail(`no genealogy of ${unit}`);
      const items = new Set([...graphs.values()].flatMap(({ nodes }) => nodes.flatMap(itemOf)));
      for (const { body } of events)
        if ('item' in body && typeof body.item === 'string') items.add(body.item);
      const users = new Map(
        [...items].map((item) => [item, new Set(model.whereUsed({ item }).units.map(({ unit }) => unit))]),
      );
      expect(users.size).toBeGreaterThan(0);
      for (const [unit, graph] of graphs) {
        expect(graph.left).toBe(0);
        const used = [...items].filter((item) => users.get(item)?.has(unit)).sort();
        expect({ unit, items: reaching(graph, 'item') }).toEqual({ unit, items: used });
        expect({ unit, items: graph.nodes.flatMap(itemOf).sort() }).toEqual({ unit, items: used });
        // What is upstream of one unit has that unit downstream of it, however many stories lie between.
        for (const source of reaching(graph, 'unit'))
          if (source !== unit) expect(reached(graphOf(source)), source).toContain(unit);
        for (const target of reached(graph))
          if (target !== unit)
            expect(reaching(graphOf(target), 'unit'), `${target} downstream of ${unit}`).toContain(unit);
      }
      await closeDatabase();
      await fresh.drop();
    });
});

function unitsOf({ body }: ReturnType<typeof randomHistory>['events'][number]): string[] {
  if (!('unit' in body)) return [];
  const others = ['into', 'from', 'fromUnit'].flatMap((name) =>
    Object.entries(body).filter(([key]) => key === name),
  );
  return [body.unit, ...others.map(([, code]) => String(code))];
}

function itemOf(node: GenealogyAnswer['nodes'][number]): string[] {
  return node.kind === 'item' ? [node.code] : [];
}
