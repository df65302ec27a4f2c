import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { create, type Font } from 'fontkit';
import type { TextWidth } from '@/lib/domain/labels/fit-text';

const FOLDER = join(process.cwd(), 'node_modules', 'dejavu-fonts-ttf', 'ttf');

/** A font of labels: its file, how wide it sets a text, and which characters it has no picture of. */
export type LabelFont = { bytes: Buffer; width: TextWidth; missing: (text: string) => string[] };

let fonts: { code: LabelFont; detail: LabelFont } | null = null;

/** Codes are set in a fixed-width font whose zero is no O, details in a narrow one; both are open and embedded. */
export function labelFonts(): { code: LabelFont; detail: LabelFont } {
  fonts ??= { code: load('DejaVuSansMono-Bold.ttf'), detail: load('DejaVuSansCondensed.ttf') };
  return fonts;
}

function load(file: string): LabelFont {
  const bytes = readFileSync(join(FOLDER, file));
  const font = create(bytes);
  if (!isFont(font)) throw new Error(`${file} is no single font`);
  return {
    bytes,
    width: (text) => font.layout(text).advanceWidth / font.unitsPerEm,
    missing: (text) => [
      ...new Set([...text].filter((letter) => !font.hasGlyphForCodePoint(letter.codePointAt(0) ?? 0))),
    ],
  };
}

function isFont(font: ReturnType<typeof create>): font is Font {
  return 'layout' in font;
}
