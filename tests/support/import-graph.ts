import { readdirSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { parseSync } from 'oxc-parser';
import { ResolverFactory } from 'oxc-resolver';

/** One import: `to` is a file of the project, `package` the name of a package, or `node` for what Node brings. */
export type Import = { from: string; specifier: string; isType: boolean } & (
  | { to: string; package: null }
  | { to: null; package: string }
);

/** What the project's files import from each other and from packages; `unresolved` names what leads nowhere. */
export type ImportGraph = { files: string[]; imports: Import[]; unresolved: string[] };

const ROOT = process.cwd();
const FOLDERS = ['app', 'lib', 'scripts', 'tests'];
const SOURCE = /\.(ts|tsx|mts|mjs|js)$/;

/** Reads every source file of the project, whatever the text of its import paths looks like. */
export function readImportGraph(): ImportGraph {
  const files = FOLDERS.flatMap((folder) =>
    readdirSync(join(ROOT, folder), { recursive: true, encoding: 'utf8' }).map((name) => join(folder, name)),
  ).filter((file) => SOURCE.test(file));
  const resolver = new ResolverFactory({
    extensions: ['.ts', '.tsx', '.d.ts', '.mts', '.mjs', '.js', '.json', '.css'],
    conditionNames: ['node', 'import'],
    tsconfig: { configFile: join(ROOT, 'tsconfig.json') },
  });
  const graph: ImportGraph = { files, imports: [], unresolved: [] };
  for (const file of files)
    for (const { specifier, isType } of importsOf(file)) {
      const found = locate(resolver, file, specifier);
      if (found === null) graph.unresolved.push(`${file} → ${specifier}`);
      else graph.imports.push({ from: file, specifier, isType, ...found });
    }
  return graph;
}

function importsOf(file: string): { specifier: string; isType: boolean }[] {
  const text = readFileSync(join(ROOT, file), 'utf8');
  const { module } = parseSync(file, text);
  const textOf = ({ start, end }: { start: number; end: number }) =>
    text.slice(start, end).replaceAll(/^['"`]|['"`]$/g, '');
  return [
    ...module.staticImports.map(({ moduleRequest, entries }) => ({
      specifier: moduleRequest.value,
      isType: entries.length > 0 && entries.every((entry) => entry.isType),
    })),
    ...module.staticExports.flatMap(({ entries }) =>
      entries.flatMap(({ moduleRequest, isType }) =>
        moduleRequest === null ? [] : [{ specifier: moduleRequest.value, isType }],
      ),
    ),
    ...module.dynamicImports.map(({ moduleRequest }) => ({
      specifier: textOf(moduleRequest),
      isType: false,
    })),
  ];
}

function locate(
  resolver: ResolverFactory,
  file: string,
  specifier: string,
): { to: string; package: null } | { to: null; package: string } | null {
  if (specifier.startsWith('node:')) return { to: null, package: 'node' };
  const { path, builtin } = resolver.resolveFileSync(join(ROOT, file), specifier);
  if (builtin !== undefined) return { to: null, package: 'node' };
  const isBare = !specifier.startsWith('.') && !specifier.startsWith('@/');
  // A package may bring types alone, or nothing for the conditions asked here; its name says enough.
  if (isBare) return { to: null, package: packageOf(specifier) };
  if (path === undefined) return null;
  const inside = relative(ROOT, path);
  return inside.startsWith('node_modules/')
    ? { to: null, package: packageOf(inside.slice('node_modules/'.length)) }
    : { to: inside, package: null };
}

function packageOf(path: string): string {
  return path
    .split('/')
    .slice(0, path.startsWith('@') ? 2 : 1)
    .join('/');
}

/** Every circle of imports, each as the files that it goes through; empty when there is none. */
export function circlesOf(edges: ReadonlyMap<string, readonly string[]>): string[][] {
  const circles: string[][] = [];
  const done = new Set<string>();
  const path: string[] = [];
  const visit = (file: string): void => {
    const at = path.indexOf(file);
    if (at !== -1) {
      circles.push([...path.slice(at), file]);
      return;
    }
    if (done.has(file)) return;
    path.push(file);
    for (const next of edges.get(file) ?? []) visit(next);
    path.pop();
    done.add(file);
  };
  for (const file of edges.keys()) visit(file);
  return circles;
}
