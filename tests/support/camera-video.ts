import { writeFileSync } from 'node:fs';
import bwip from 'bwip-js/node';

const WIDTH = 960;
const HEIGHT = 720;
const TURN_RAD = (8 * Math.PI) / 180;

type Colour = { y: number; u: number; v: number };

const SOLDER_MASK: Colour = { y: 78, u: 118, v: 96 };
const PAD: Colour = { y: 190, u: 120, v: 136 };
const PART: Colour = { y: 38, u: 128, v: 128 };
const PAPER: Colour = { y: 214, u: 126, v: 130 };
const INK: Colour = { y: 30, u: 128, v: 128 };

/** A symbol's dark modules, as drawn by bwip-js. */
type Modules = { isDark: (column: number, row: number) => boolean; columns: number; rows: number };

/** The modules of a QR code or a Data Matrix. */
export function symbolModules(kind: 'qrcode' | 'datamatrix', text: string): Modules {
  const [symbol] = bwip.raw({ bcid: kind, text });
  if (symbol === undefined || !('pixs' in symbol)) throw new Error(`bwip-js drew no ${kind}`);
  const { pixs, pixx: columns, pixy: rows } = symbol;
  return { isDark: (column, row) => pixs[row * columns + column] === 1, columns, rows };
}

/**
 * Writes a raw video in which a camera stands over a green board: pads, black parts, and a slightly turned paper label
 * with the symbol, lit from one side. `modulePx` is the size of a module in pixels.
 */
export function writeBoardVideo(path: string, options: { modules: Modules; modulePx: number }): void {
  const frame = drawFrame(options);
  const head = Buffer.from(`YUV4MPEG2 W${WIDTH} H${HEIGHT} F10:1 Ip A1:1 C420jpeg\n`);
  const mark = Buffer.from('FRAME\n');
  writeFileSync(path, Buffer.concat([head, mark, frame, mark, frame]));
}

function drawFrame({ modules, modulePx }: { modules: Modules; modulePx: number }): Buffer {
  const luma = Buffer.alloc(WIDTH * HEIGHT);
  const half = (WIDTH / 2) * (HEIGHT / 2);
  const chromaU = Buffer.alloc(half);
  const chromaV = Buffer.alloc(half);
  for (let y = 0; y < HEIGHT; y += 1)
    for (let x = 0; x < WIDTH; x += 1) {
      const colour = colourAt({ x, y, modules, modulePx });
      // A lamp at the left, and the grain of a sensor that is always the same.
      const light = 1.06 - (0.22 * x) / WIDTH;
      const grain = ((x * 7919 + y * 104729) % 11) - 5;
      luma[y * WIDTH + x] = Math.max(16, Math.min(235, Math.round(colour.y * light + grain)));
      if (x % 2 !== 0 || y % 2 !== 0) continue;
      const at = (y / 2) * (WIDTH / 2) + x / 2;
      chromaU[at] = colour.u;
      chromaV[at] = colour.v;
    }
  return Buffer.concat([luma, chromaU, chromaV]);
}

type Point = { x: number; y: number; modules: Modules; modulePx: number };

function colourAt({ x, y, modules, modulePx }: Point): Colour {
  const fromCentre = { x: x - WIDTH / 2 - 14, y: y - HEIGHT / 2 + 9 };
  const turned = {
    x: fromCentre.x * Math.cos(TURN_RAD) + fromCentre.y * Math.sin(TURN_RAD),
    y: fromCentre.y * Math.cos(TURN_RAD) - fromCentre.x * Math.sin(TURN_RAD),
  };
  const column = Math.floor(turned.x / modulePx + modules.columns / 2);
  const row = Math.floor(turned.y / modulePx + modules.rows / 2);
  const isInside = column >= 0 && row >= 0 && column < modules.columns && row < modules.rows;
  if (isInside) return modules.isDark(column, row) ? INK : PAPER;
  const quiet = 4;
  const isOnLabel =
    column >= -quiet && row >= -quiet && column < modules.columns + quiet && row < modules.rows + quiet;
  return isOnLabel ? PAPER : boardAt(x, y);
}

/** Rows of chip parts between their pads, and a larger part here and there. */
function boardAt(x: number, y: number): Colour {
  const cell = { x: Math.floor(x / 60), y: Math.floor(y / 45) };
  const within = { x: x % 60, y: y % 45 };
  const isLarge = (cell.x * 5 + cell.y * 3) % 11 === 0;
  if (isLarge && within.x > 6 && within.x < 54 && within.y > 6 && within.y < 38) return PART;
  if ((cell.x + cell.y) % 2 === 0 || within.y < 16 || within.y > 30) return SOLDER_MASK;
  if (within.x > 14 && within.x < 46) return within.x > 22 && within.x < 38 ? PART : PAD;
  return SOLDER_MASK;
}
