import { DirectedGraph } from 'graphology';
import type pg from 'pg';
import { cabinetCode, unitCode } from '@/scripts/bench/line/bench-codes';
import { cabinetOf } from '@/scripts/bench/line/incidents';
import { textbookRows } from '@/scripts/bench/models/textbook-rows';

/** Most units whose graph fits into the bench's memory: some hundred bytes an edge, a hundred edges a unit. */
export const GRAPH_UNITS_MAX = 20_000;

export type GraphModel = { whereUsed(item: string): Record<string, unknown>[] };

const PLACES = `
  select u.unit, u.product, u.revision, o.place_station as station, o.container, c.shipment, c.customer,
         case when o.place = 'container' and c.shipment is not null then 'shipped' else o.place end as place
  from read.unit u
  left join read.unit o on o.unit = coalesce(u.outermost, u.unit)
  left join read.container c on c.container = o.container and o.place = 'container'`;

/** Items and units as nodes, draws and joinings as edges, in memory: where-used follows them outwards. */
export async function openGraphModel(client: pg.ClientBase, unitCount: number): Promise<GraphModel> {
  const graph = new DirectedGraph();
  const { rows } = await client.query(PLACES);
  for (const { unit, ...place } of rows) graph.addNode(unit, place);
  for (const { unit, item, relation, is_certain, through } of textbookRows(unitCount)) {
    if (through.length > 0) continue;
    graph.mergeNode(item);
    graph.addEdge(item, unit, { relation, isCertain: is_certain });
  }
  for (let unit = 0; unit < unitCount; unit += 1) {
    const cabinet = cabinetOf(unit);
    if (cabinet !== null) graph.addEdge(unitCode(unit), cabinetCode(cabinet), { isJoining: true });
  }
  return { whereUsed: (item) => reach(graph, item) };
}

function reach(graph: DirectedGraph, item: string): Record<string, unknown>[] {
  const found: Record<string, unknown>[] = [];
  const visit = (unit: string, draw: Record<string, unknown>, through: string[]) => {
    const certainty = draw.isCertain ? 'certain' : 'possible';
    found.push({ unit, ...graph.getNodeAttributes(unit), certainty, relation: draw.relation, through });
    graph.forEachOutEdge(unit, (_edge, _attributes, _source, outer) =>
      visit(outer, draw, [unit, ...through]),
    );
  };
  graph.forEachOutEdge(item, (_edge, draw, _source, unit) => visit(unit, draw, []));
  return found.sort((a, b) => (String(a.unit) < String(b.unit) ? -1 : 1));
}
