import { describe, expect, it } from 'vitest';
import { locateFaults, parseJsonText } from '@/lib/server/locate-faults';

const text = `{
  "site": {"code": "TVE"},
  "stations": [
    {"code": "L1",
     "operation": 7, "a/b": 1}
  ]
}`;

function lineOf(pointer: string): number | undefined {
  const { tree } = parseJsonText(text);
  if (tree === null) throw new Error('The text is JSON.');
  return locateFaults(text, tree, [{ pointer, code: 'x', detail: 'x' }])[0]?.line;
}

describe('faults of a plant file', () => {
  it.each([
    ['', 1],
    ['/site', 2],
    ['/site/code', 2],
    ['/stations', 3],
    ['/stations/0', 4],
    ['/stations/0/operation', 5],
    ['/stations/0/a~1b', 5],
    ['/stations/0/missing', 4],
    ['/stations/7/code', 3],
    ['/nothing/at/all', 1],
  ])('points %s to line %i', (pointer, line) => {
    expect(lineOf(pointer)).toBe(line);
  });

  it.each([
    ['', 1],
    ['{"a": 1,}', 1],
    ['{\n  "a": 1\n  "b": 2\n}', 3],
    ['{\n  "a": [1, 2\n}', 3],
    ['// note\n{}', 1],
    ['{}\n{}', 2],
  ])('finds the line where %j stops being JSON', (broken, line) => {
    const { tree, faults } = parseJsonText(broken);
    expect(tree).toBeNull();
    expect(faults[0]).toMatchObject({ line, code: 'not_json' });
  });
});
