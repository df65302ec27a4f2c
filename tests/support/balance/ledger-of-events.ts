import type { Anchor, Balance, Ledger, Period, ReelPass, ReelStay } from '@/lib/domain/balance/ledger';
import { weighPeriod } from '@/lib/domain/balance/weigh-period';
import type { WireEvent } from '@/lib/domain/events/catalogue';
import type { PlantFile } from '@/lib/domain/plant/plant-file';
import { compareKeys, instantOf } from '@/lib/domain/time';

const OPEN = Number.POSITIVE_INFINITY;

/** What the arithmetic looks at, made from the events of a history by walking them, without a database. */
export function ledgerOfEvents(
  events: readonly WireEvent[],
  plant: PlantFile,
): Ledger & { passesOf(stay: ReelStay): ReelPass[] } {
  const ordered = events
    .map((event) => ({ ...event, atUs: instantOf(event.at) }))
    .sort((a, b) => compareKeys(a, b));
  const productOf = new Map<string, string>();
  const partOf = new Map<string, string>();
  const anchors: Anchor[] = [];
  const stays: ReelStay[] = [];
  const passes: { unit: string; station: string; lowUs: number; highUs: number }[] = [];
  for (const event of ordered) {
    const { atUs } = event;
    const anchor = (item: string, left: number | undefined) => {
      if (left !== undefined)
        anchors.push({
          event: event.id,
          item,
          atUs,
          lowUs: atUs,
          highUs: atUs,
          left,
          isFinal: event.type === 'item.retired',
        });
    };
    if (event.type === 'unit.started') productOf.set(event.body.unit, event.body.product);
    if (event.type === 'item.received') {
      partOf.set(event.body.item, event.body.part ?? '');
      anchor(event.body.item, event.body.quantity);
    }
    if (event.type === 'item.counted') anchor(event.body.item, event.body.quantity);
    if (event.type === 'item.unmounted' || event.type === 'item.retired')
      anchor(event.body.item, event.body.left);
    if (event.type === 'unit.processed') {
      const lowUs = event.body.startedAt === undefined ? atUs : instantOf(event.body.startedAt);
      passes.push({ unit: event.body.unit, station: event.station, lowUs, highUs: atUs });
    }
    if (event.type === 'item.mounted' || event.type === 'item.unmounted') {
      const { station, body } = event;
      const open = stays.findLast((stay) => stay.station === station && stay.slot === body.slot);
      const isEnded = event.type === 'item.mounted' || open?.item === body.item;
      if (open !== undefined && isEnded && open.toUs === OPEN) open.toUs = atUs;
      if (event.type === 'item.mounted')
        stays.push({ event: event.id, ...body, station, fromUs: atUs, toUs: OPEN });
    }
  }
  stays.sort((a, b) => (a.station < b.station ? -1 : a.station > b.station ? 1 : 0) || a.fromUs - b.fromUs);

  const piecesOf = (unit: string, station: string): number =>
    plant.products
      ?.find(({ number }) => number === productOf.get(unit))
      ?.bom?.find((line) => line.station === station)?.positions?.length ?? 0;
  const passesOf = (stay: ReelStay): ReelPass[] =>
    passes.flatMap(({ unit, station, lowUs, highUs }) => {
      if (station !== stay.station || highUs < stay.fromUs || lowUs >= stay.toUs) return [];
      const isCertain = lowUs >= stay.fromUs && highUs < stay.toUs;
      return [{ unit, lowUs, highUs, pieces: piecesOf(unit, station), isCertain }];
    });

  const balances = [...partOf].flatMap(([item, part]): Balance[] => {
    const attrition = plant.parts?.find(({ number }) => number === part)?.attrition;
    if (attrition === undefined) return [];
    const own = anchors.filter((anchor) => anchor.item === item);
    return own.flatMap((from, index) => {
      const period: Period = { item, from, to: own[index + 1] ?? null };
      const used = { min: 0, max: 0 };
      for (const stay of stays.filter((each) => each.item === item))
        for (const pass of passesOf(stay)) {
          const endUs = period.to?.atUs ?? OPEN;
          if (pass.highUs < from.atUs || pass.lowUs >= endUs) continue;
          used.max += pass.pieces;
          if (pass.isCertain && pass.lowUs >= from.atUs && pass.highUs < endUs) used.min += pass.pieces;
        }
      const balance = weighPeriod(period, { part, attrition, used });
      return balance === null ? [] : [balance];
    });
  });
  return { balances, stays, passesOf };
}
