import { memo } from 'react';
import classes from '@/lib/ui/genealogy/genealogy.module.css';
import { curveOf, type Line } from '@/lib/ui/genealogy/lay-out';

/** Lines under the nodes; those that look the same are one path, so that a thousand cost a handful of elements. */
export const GraphLines = memo(function GraphLines({ lines }: { lines: readonly Line[] }) {
  const paths = new Map<string, { line: Line; curves: string[] }>();
  for (const line of lines) {
    const { edge, isAgain } = line;
    const look = `${edge.relation} ${edge.certainty} ${isAgain}`;
    const path = paths.get(look) ?? { line, curves: [] };
    path.curves.push(curveOf(line));
    paths.set(look, path);
  }
  return (
    <svg className={classes.lines} aria-hidden="true" width="1" height="1">
      <title>·</title>
      {[...paths].map(([look, { line, curves }]) => (
        <path
          key={look}
          d={curves.join('')}
          data-relation={line.edge.relation ?? undefined}
          data-certainty={line.edge.certainty}
          data-again={line.isAgain}
        />
      ))}
    </svg>
  );
});
