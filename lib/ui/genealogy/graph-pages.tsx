import classes from '@/lib/ui/genealogy/genealogy.module.css';
import { GraphLines } from '@/lib/ui/genealogy/graph-lines';
import { type Box, boxOfSpot, crosses, isIn, type Layout, NODE } from '@/lib/ui/genealogy/lay-out';
import { NodeCard } from '@/lib/ui/genealogy/node-card';

/** What fits on a sheet of A4, in CSS pixels; on the first one the head of the page is above the picture, and the meaning of lines below it. */
const SHEETS = {
  portrait: { width: 710, height: 1020 },
  landscape: { width: 1030, height: 690 },
} as const;
const HEAD_HEIGHT = 270;
/** Smallest scale at which the words can still be read on paper: 15 px become 6 pt. */
const SCALE_MIN = 0.53;

/** The picture on paper: whole on one sheet where its words can be read so, else on as many as it takes. */
export function GraphPages({ layout }: { layout: Layout }) {
  const { sheet, scale, tiles } = tilesOf(layout.box);
  const pages = tiles.map((tile) => (
    <div
      key={`${tile.x0} ${tile.y0}`}
      className={classes.sheet}
      style={{ width: (tile.x1 - tile.x0) * scale, height: (tile.y1 - tile.y0) * scale }}
    >
      <div
        className={classes.layer}
        style={{ transform: `scale(${scale}) translate(${-tile.x0}px, ${-tile.y0}px)` }}
      >
        <GraphLines lines={layout.lines.filter((line) => crosses(line, tile))} />
        {layout.spots
          .filter((spot) => isIn(spot, tile))
          .map((spot) => {
            const { x0, y0 } = boxOfSpot(spot);
            return (
              <div key={spot.id} className={`${classes.place} ${classes.node}`} style={{ left: x0, top: y0 }}>
                <NodeCard spot={spot} />
              </div>
            );
          })}
      </div>
    </div>
  ));
  return (
    <>
      <style>{`@media print{@page{size:A4 ${sheet}}}`}</style>
      {pages}
    </>
  );
}

type Plan = { sheet: keyof typeof SHEETS; scale: number; tiles: Box[] };

/**
 * How a box goes on paper: the way round that shows it larger, on one sheet while its words can be read there; else in
 * parts that overlap by a node, so that each node is whole on one of them.
 */
function tilesOf(box: Box): Plan {
  const [width, height] = [box.x1 - box.x0, box.y1 - box.y0];
  const wholeOn = (sheet: keyof typeof SHEETS) =>
    Math.min(1, SHEETS[sheet].width / width, (SHEETS[sheet].height - HEAD_HEIGHT) / height);
  const sheet = wholeOn('portrait') > wholeOn('landscape') ? 'portrait' : 'landscape';
  const whole = wholeOn(sheet);
  if (whole >= SCALE_MIN) return { sheet, scale: whole, tiles: [box] };
  const room = SHEETS[sheet];
  const scale = Math.max(SCALE_MIN, Math.min(1, room.width / width));
  const rows = cut([box.y0, box.y1], {
    first: (room.height - HEAD_HEIGHT) / scale,
    next: room.height / scale,
    overlap: NODE.height,
  });
  const columns = cut([box.x0, box.x1], {
    first: room.width / scale,
    next: room.width / scale,
    overlap: NODE.width,
  });
  const tiles = rows.flatMap(([y0, y1]) => columns.map(([x0, x1]) => ({ x0, y0, x1, y1 })));
  return { sheet, scale, tiles };
}

/** A range in pieces, each of which begins before the one before it ends. */
function cut(
  [from, to]: readonly [number, number],
  { first, next, overlap }: { first: number; next: number; overlap: number },
): [number, number][] {
  const pieces: [number, number][] = [];
  for (let begin = from, end = from + first; ; begin = end - overlap, end = begin + next) {
    pieces.push([begin, Math.min(end, to)]);
    if (end >= to) return pieces;
  }
}
