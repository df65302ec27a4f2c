import type { SymbolModules } from '@/lib/domain/labels/arrange-label';

/** A run of dark modules in one row. */
export type ModuleRun = { column: number; row: number; length: number };

/** The dark modules as runs: neighbours that are drawn in one piece leave no hairline between them. */
export function moduleRuns({ columns, rows, isDark }: SymbolModules): ModuleRun[] {
  const runs: ModuleRun[] = [];
  for (let row = 0; row < rows; row += 1) {
    let open: ModuleRun | null = null;
    for (let column = 0; column < columns; column += 1) {
      if (!isDark[row * columns + column]) {
        open = null;
      } else if (open === null) {
        open = { column, row, length: 1 };
        runs.push(open);
      } else open.length += 1;
    }
  }
  return runs;
}

/** The same as an SVG path, one unit a module. */
export function symbolPath(modules: SymbolModules): string {
  return moduleRuns(modules)
    .map(({ column, row, length }) => `M${column} ${row}h${length}v1h-${length}z`)
    .join('');
}
