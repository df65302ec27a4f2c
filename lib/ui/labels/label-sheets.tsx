'use client';

import type { DrawnLabel } from '@/lib/domain/labels/label-picture';
import { type LabelStock, labelPlace, labelSize, pageSize } from '@/lib/domain/labels/label-stock';
import classes from '@/lib/ui/labels/labels.module.css';

/** Sheets in their true size: on the screen as a preview, on paper as they are. */
export function LabelSheets({
  stock,
  labels,
  copies,
  skip,
}: {
  stock: LabelStock;
  labels: readonly DrawnLabel[];
  copies: number;
  skip: number;
}) {
  const { widthMm, heightMm } = pageSize(stock);
  const size = labelSize(stock);
  const places = labels
    .flatMap((label) => Array.from({ length: copies }, () => label))
    .map((label, index) => ({ label, ...labelPlace(stock, (stock.kind === 'sheet' ? skip : 0) + index) }));
  const pages = groupByPage(places);
  return (
    <div className={classes.sheets} data-label-sheets>
      <style>{`@page{size:${widthMm}mm ${heightMm}mm;margin:0}`}</style>
      {pages.map(({ page, places: onPage }) => (
        <div
          key={page}
          className={classes.sheet}
          style={{ width: `${widthMm}mm`, height: `${heightMm}mm` }}
          data-sheet
        >
          {onPage.map(({ label, xMm, yMm }) => (
            <svg
              key={`${xMm} ${yMm}`}
              role="img"
              aria-label={label.code}
              viewBox={`0 0 ${size.widthMm} ${size.heightMm}`}
              style={{
                left: `${xMm}mm`,
                top: `${yMm}mm`,
                width: `${size.widthMm}mm`,
                height: `${size.heightMm}mm`,
              }}
            >
              <Label label={label} />
            </svg>
          ))}
        </div>
      ))}
    </div>
  );
}

function Label({ label: { path, arranged } }: { label: DrawnLabel }) {
  const { symbol, texts } = arranged;
  return (
    <>
      <path
        d={path}
        transform={`translate(${symbol.xMm} ${symbol.yMm}) scale(${symbol.moduleMm})`}
        shapeRendering="crispEdges"
      />
      {texts.map(({ text, xMm, baselineMm, sizeMm, widthMm, isCode }) => (
        <text
          key={baselineMm}
          x={xMm}
          y={baselineMm}
          fontSize={sizeMm}
          fontWeight={isCode ? 700 : 400}
          fontFamily={isCode ? 'ui-monospace, monospace' : 'sans-serif'}
          // Whatever font the browser has, the text takes the room that was measured for it.
          textLength={widthMm}
          lengthAdjust="spacingAndGlyphs"
        >
          {text}
        </text>
      ))}
    </>
  );
}

type Place = { label: DrawnLabel; page: number; xMm: number; yMm: number };

function groupByPage(places: readonly Place[]): { page: number; places: Place[] }[] {
  const pages = new Map<number, Place[]>();
  for (const place of places) pages.set(place.page, [...(pages.get(place.page) ?? []), place]);
  return [...pages].map(([page, onPage]) => ({ page, places: onPage }));
}
