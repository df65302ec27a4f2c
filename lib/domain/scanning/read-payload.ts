import { codeFault } from '@/lib/domain/codes';
import { GS, hasControlCharacter } from '@/lib/domain/scanning/control-characters';
import { hasLostAllSeparators, type LabelWarning, readFormat06 } from '@/lib/domain/scanning/format-06';
import { type Gs1Element, readGs1, readGs1WithLostSeparators } from '@/lib/domain/scanning/gs1-elements';
import {
  codeOfFacts,
  factsOfDataFields,
  factsOfGs1,
  type LabelFacts,
} from '@/lib/domain/scanning/label-facts';

/** Why nothing could be made of a scan. */
export type PayloadFault = 'separators_lost' | 'no_code' | 'unreadable';

/** What was scanned: the code that matters, and what else the label says. */
export type Scanned =
  | { ok: true; code: string; facts: LabelFacts | null; warnings: LabelWarning[] }
  | { ok: false; fault: PayloadFault };

/** Whether a whole text is a serial by the plant's patterns. */
export type IsSerial = (text: string) => boolean;

// Symbology identifiers that a scanner may send in front (ISO/IEC 15424, from memory): of GS1 symbols, and of others.
const GS1_SYMBOL = /^\](?:C1|e0|d2|Q3|J1)/;
// biome-ignore lint/suspicious/noControlCharactersInRegex: a scanner may send GS as the first character
const OUTSIDE = /^[\s\u001d]+|[\s\u001d]+$/g;
const SYMBOL = /^\][A-Za-z][0-9A-Za-z]/;

/**
 * Reads what a scanner or a camera sent: a label of ISO/IEC 15434 format 06, a GS1 string, or a bare code. A serial of
 * the plant is a bare code whatever else it could be read as.
 */
export function readPayload(payload: string, isSerial: IsSerial): Scanned {
  const isGs1Symbol = GS1_SYMBOL.test(payload) || payload.startsWith(GS);
  const text = payload.replace(SYMBOL, '').replace(OUTSIDE, '');
  if (isSerial(text)) return bare(text);
  if (hasLostAllSeparators(text)) return { ok: false, fault: 'separators_lost' };
  const data = readFormat06(text);
  if (data !== null) return ofLabel(factsOfDataFields(data), data.warnings);
  return readGs1Payload(text, isGs1Symbol, isSerial) ?? bare(text);
}

function bare(code: string): Scanned {
  const fault = codeFault(code);
  if (fault === 'empty') return { ok: false, fault: 'no_code' };
  // What is merely too long or badly set stays what was scanned: the screen says what is wrong with it.
  if (hasControlCharacter(code)) return { ok: false, fault: 'unreadable' };
  return { ok: true, code, facts: null, warnings: [] };
}

function ofLabel(facts: LabelFacts, warnings: LabelWarning[]): Scanned {
  const code = codeOfFacts(facts);
  if (code === null) return { ok: false, fault: 'no_code' };
  if (hasControlCharacter(code)) return { ok: false, fault: 'unreadable' };
  return { ok: true, code, facts, warnings };
}

/**
 * Null when the text is no GS1 string. One without separator and symbology identifier proves itself by a key with its
 * check digit in front, or by a serial of the plant. Where a scanner has dropped a separator, the serial patterns tell
 * where it stood, if that gives one serial only.
 */
function readGs1Payload(text: string, isMarked: boolean, isSerial: IsSerial): Scanned | null {
  const straight = readGs1(text);
  const serialOf = (elements: readonly Gs1Element[]) => factsOfGs1(elements).serial;
  const hasPlantSerial = (elements: readonly Gs1Element[]) => isSerial(serialOf(elements) ?? '');
  if (straight !== null && hasPlantSerial(straight)) return ofLabel(factsOfGs1(straight), []);

  const isProven = isMarked || text.includes(GS) || (straight !== null && beginsWithKey(straight));
  const repaired = text.includes('21') ? readGs1WithLostSeparators(text).filter(hasPlantSerial) : [];
  const [fewest] = repaired.sort((a, b) => a.length - b.length);
  if (fewest !== undefined)
    return new Set(repaired.map(serialOf)).size === 1
      ? ofLabel(factsOfGs1(fewest), ['separator_lost'])
      : { ok: false, fault: 'separators_lost' };
  return straight !== null && isProven ? ofLabel(factsOfGs1(straight), []) : null;
}

function beginsWithKey([first]: readonly Gs1Element[]): boolean {
  return first !== undefined && ['00', '01', '02'].includes(first.ai);
}
