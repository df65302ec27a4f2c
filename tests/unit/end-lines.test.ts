import fc from 'fast-check';
import { expect, it } from 'vitest';
import { endLines } from '@/lib/server/end-lines';

async function ended(text: string, cuts: readonly number[] = []): Promise<string> {
  const bytes = Buffer.from(text);
  const edges = [...new Set([0, ...cuts.map((cut) => cut % (bytes.length + 1)), bytes.length])].sort(
    (a, b) => a - b,
  );
  async function* parts() {
    for (let index = 1; index < edges.length; index += 1)
      yield bytes.subarray(edges[index - 1], edges[index]);
  }
  const got: Buffer[] = [];
  for await (const part of endLines(parts())) got.push(part);
  return Buffer.concat(got).toString();
}

it('ends every line with CR LF, and leaves a line feed inside quotes alone', async () => {
  expect(await ended('a,b\n"c\n""d""\n",e\n')).toBe('a,b\r\n"c\n""d""\n",e\r\n');
  expect(await ended('')).toBe('');
});

it('does so wherever the file is cut into parts', async () => {
  await fc.assert(
    fc.asyncProperty(
      fc.array(fc.constantFrom('a', ',', '\n', '"x\ny"', '"""\n"', 'é')),
      fc.array(fc.nat()),
      async (pieces, cuts) => {
        const text = pieces.join('');
        const expected = pieces.map((piece) => (piece === '\n' ? '\r\n' : piece)).join('');
        expect(await ended(text, cuts)).toBe(expected);
      },
    ),
  );
});
