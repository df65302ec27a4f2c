import {
  findNodeAtLocation,
  type JSONPath,
  type Node,
  type ParseError,
  parseTree,
  printParseErrorCode,
} from 'jsonc-parser';
import type { InputError } from '@/lib/domain/input-errors';
import type { FileFault } from '@/lib/domain/plant/plant-preview';

const FAULTS_MAX = 100;

/** A JSON text with its tree, or the places where it is not JSON. */
export type ParsedText = { tree: Node; faults: [] } | { tree: null; faults: FileFault[] };

/** Reads a text as plain JSON: no comments, no commas too many. */
export function parseJsonText(text: string): ParsedText {
  const errors: ParseError[] = [];
  const tree = parseTree(text, errors, { disallowComments: true, allowTrailingComma: false });
  if (tree !== undefined && errors.length === 0) return { tree, faults: [] };
  const faults = errors.slice(0, FAULTS_MAX).map(({ error, offset }) => ({
    ...placeOf(text, offset),
    pointer: '',
    code: 'not_json',
    detail: printParseErrorCode(error),
  }));
  return { tree: null, faults };
}

/** Finds the line of each fault, first lines first: that of the value it points to, or of the nearest one around what is missing. */
export function locateFaults(text: string, tree: Node, errors: readonly InputError[]): FileFault[] {
  return errors
    .map((error) => ({ ...placeOf(text, offsetOf(tree, error.pointer)), ...error }))
    .sort((a, b) => a.offset - b.offset);
}

function offsetOf(tree: Node, pointer: string): number {
  let node = tree;
  const path: JSONPath = [];
  for (const step of pointer.split('/').slice(1)) {
    const key = step.replaceAll('~1', '/').replaceAll('~0', '~');
    path.push(node.type === 'array' ? Number(key) : key);
    const next = findNodeAtLocation(tree, path);
    if (next === undefined) break;
    node = next;
  }
  // A member of an object is shown with its name.
  return node.parent?.type === 'property' ? node.parent.offset : node.offset;
}

function placeOf(text: string, offset: number): Pick<FileFault, 'line' | 'column' | 'offset'> {
  const before = text.slice(0, offset).split('\n');
  return { line: before.length, column: (before.at(-1)?.length ?? 0) + 1, offset };
}
