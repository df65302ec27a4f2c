import type { Parameter } from '@/lib/data/trace/conditions/parameters';
import { timeTestSql } from '@/lib/data/trace/conditions/time-test-sql';
import type { ConditionOf } from '@/lib/domain/genealogy/narrow-question';
import type { Plant } from '@/lib/domain/plant/plant';

type Scope = { parameter: Parameter; plant: Plant };

/**
 * What work on units meets a condition: rows (unit, at, event, is_certain), one an event.
 * Direction: station, person, time, defect or position → events. Each by the log's index of that key.
 */
export function workFactsSql(
  condition: ConditionOf<'processed' | 'defect' | 'repaired' | 'started'>,
  { parameter, plant }: Scope,
): string {
  const { tests, certain } = testsOf(condition, { parameter, plant });
  return `
    select e.unit, e.at, e.id as event, ${certain} as is_certain
    from log.event e
    where ${tests.join(' and ')}
      and not exists (select from read.voided v where v.event = e.id)`;
}

function testsOf(
  condition: ConditionOf<'processed' | 'defect' | 'repaired' | 'started'>,
  { parameter, plant }: Scope,
): { tests: string[]; certain: string } {
  switch (condition.kind) {
    case 'processed': {
      const { operator, result } = condition;
      const time = timeTestSql(condition, parameter);
      const tests = [
        "e.type = 'unit.processed'",
        ...placeTests(condition, { parameter, plant }),
        ...time.tests,
      ];
      if (operator !== undefined) tests.push(`e.operator = ${parameter(operator, 'text')}`);
      if (result !== undefined) tests.push(`e.body ->> 'result' = ${parameter(result, 'text')}`);
      return { tests, certain: time.certain };
    }
    case 'defect': {
      const { code, position } = condition;
      const time = timeTestSql(condition, parameter);
      // Containment wants both on one and the same defect.
      const wanted = JSON.stringify([{ code, position }]);
      return {
        tests: [
          "e.type = 'unit.processed'",
          "e.body ? 'defects'",
          `e.body -> 'defects' @> ${parameter(wanted, 'jsonb')}`,
          ...placeTests(condition, { parameter, plant }),
          ...time.tests,
        ],
        certain: time.certain,
      };
    }
    case 'repaired': {
      const { position, change } = condition;
      const time = timeTestSql(condition, parameter);
      const tests = ["e.type in ('part.removed', 'part.installed')", ...time.tests];
      if (change !== undefined) tests.push(`e.type = ${parameter(`part.${change}`, 'text')}`);
      if (position !== undefined)
        tests.push(`(e.body ->> 'position') collate "C" = ${parameter(position, 'text')}`);
      return { tests, certain: time.certain };
    }
    case 'started': {
      const tests = ["e.type = 'unit.started'"];
      if (condition.boardLot !== undefined) {
        const lot = parameter(condition.boardLot, 'text');
        tests.push(
          `e.id in (select d.event from read.direct_draw d where d.item = ${lot} and d.source = 'board_lot')`,
        );
      }
      for (const name of ['order', 'panel'] as const)
        if (condition[name] !== undefined)
          tests.push(
            `e.body ? '${name}' and (e.body ->> '${name}') collate "C" = ${parameter(condition[name], 'text')}`,
          );
      return { tests, certain: 'true' };
    }
    default:
      return condition satisfies never;
  }
}

/** A station, and every station of an operation as the plant stands. */
function placeTests(
  { station, operation }: { station?: string | undefined; operation?: string | undefined },
  { parameter, plant }: Scope,
): string[] {
  const tests = [];
  if (station !== undefined) tests.push(`e.station = ${parameter(station, 'text')}`);
  if (operation !== undefined) {
    const stations = (plant.file.stations ?? []).filter((each) => each.operation === operation);
    tests.push(
      `e.station = any(${parameter(
        stations.map(({ code }) => code),
        'text[]',
      )})`,
    );
  }
  return tests;
}
