const QUOTE = 0x22;
const BACKSLASH = 0x5c;
const OPENING = [0x5b, 0x7b];
const CLOSING = [0x5d, 0x7d];

/** How deep arrays and objects nest in a JSON text, found without building them; of other texts, some number. */
export function nestingDepth(json: string): number {
  let depth = 0;
  let depthMax = 0;
  let isInString = false;
  for (let index = 0; index < json.length; index += 1) {
    const character = json.charCodeAt(index);
    if (isInString) {
      if (character === BACKSLASH) index += 1;
      else if (character === QUOTE) isInString = false;
    } else if (character === QUOTE) isInString = true;
    else if (OPENING.includes(character)) depthMax = Math.max(depthMax, ++depth);
    else if (CLOSING.includes(character)) depth -= 1;
  }
  return depthMax;
}
