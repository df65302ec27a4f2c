import { expect, test } from 'vitest';
import { z } from 'zod';
import { ProblemError } from '@/lib/server/http/problem';
import { readQuery } from '@/lib/server/http/read-query';

const schema = z.strictObject({ item: z.string().min(1).optional(), limit: z.coerce.number().optional() });

function faultsOf(query: string): [string, string][] | undefined {
  try {
    readQuery(new Request(`http://x/api/y?${query}`), schema);
    return undefined;
  } catch (error) {
    if (!(error instanceof ProblemError) || error.code !== 'malformed') throw error;
    return error.facts.errors?.map(({ pointer, code }) => [pointer, code]);
  }
}

test('reads what the schema knows, decoded', () => {
  const request = new Request('http://x/api/y?item=R%2B1&limit=5');
  expect(readQuery(request, schema)).toEqual({ item: 'R+1', limit: 5 });
  expect(readQuery(new Request('http://x/api/y'), schema)).toEqual({});
});

test('unknown, repeated and wrong parameters are each pointed at', () => {
  expect(faultsOf('itme=R1')).toEqual([['/itme', 'unknown_key']]);
  expect(faultsOf('a/b~c=1')).toEqual([['/a~1b~0c', 'unknown_key']]);
  expect(faultsOf('item=R1&item=R1')).toEqual([['/item', 'repeated']]);
  expect(faultsOf('item=')).toEqual([['/item', 'too_small']]);
});

test('names that objects have of themselves are parameters like others', () => {
  expect(faultsOf('constructor=1')).toEqual([['/constructor', 'unknown_key']]);
  expect(faultsOf('__proto__=1')).toEqual([['/__proto__', 'unknown_key']]);
});
