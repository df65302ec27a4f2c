import type { ArrangedLabel, LabelFault, SymbolModules } from '@/lib/domain/labels/arrange-label';

/** One label, ready to be drawn. */
export type LabelPicture = { code: string; modules: SymbolModules; arranged: ArrangedLabel };

/** Why a label cannot be made; `letters` are those that the embedded font has no picture of. */
export type LabelProblem =
  | { code: string; fault: LabelFault }
  | { code: string; fault: 'letters_missing'; letters: string[] };

/** A label as a page draws it: the dark modules as an SVG path, one unit a module. */
export type DrawnLabel = { code: string; path: string; arranged: ArrangedLabel };
