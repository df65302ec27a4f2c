'use client';

import { useRouter } from 'next/navigation';
import { type KeyboardEvent, useEffect, useLayoutEffect, useMemo, useRef, useState } from 'react';
import { useTranslations } from 'use-intl';
import type { GenealogyAnswer } from '@/lib/domain/genealogy/graph/genealogy-graph';
import classes from '@/lib/ui/genealogy/genealogy.module.css';
import { GraphCanvas } from '@/lib/ui/genealogy/graph-canvas';
import { GraphLegend } from '@/lib/ui/genealogy/graph-legend';
import { GraphPages } from '@/lib/ui/genealogy/graph-pages';
import { GraphTools } from '@/lib/ui/genealogy/graph-tools';
import { boxOfSpot, layOut, neighbour, type Spot } from '@/lib/ui/genealogy/lay-out';
import { nodeHref } from '@/lib/ui/genealogy/node-href';
import { NodePanel } from '@/lib/ui/genealogy/node-panel';
import { allFolded, startFolded } from '@/lib/ui/genealogy/start-folded';
import { useNodeWords } from '@/lib/ui/genealogy/use-node-words';
import { useSteadyActions } from '@/lib/ui/genealogy/use-steady-actions';
import { useViewport } from '@/lib/ui/genealogy/use-viewport';
import { indexTree, visibleTree } from '@/lib/ui/genealogy/visible-tree';
import { useIsPrinting } from '@/lib/ui/use-printing';

const ARROWS = { ArrowLeft: 'left', ArrowRight: 'right', ArrowUp: 'up', ArrowDown: 'down' } as const;

/** The picture with its tools, the picked node in words, and what the lines mean; on paper the whole of it. */
export function GenealogyPicture({ answer }: { answer: GenealogyAnswer }) {
  const t = useTranslations('genealogy');
  const router = useRouter();
  const { nodeWords } = useNodeWords();
  const [folded, setFolded] = useState(() => startFolded(answer));
  const [picked, setPicked] = useState(answer.nodes[0]?.id ?? '');
  const [said, setSaid] = useState('');
  const index = useMemo(() => indexTree(answer), [answer]);
  const layout = useMemo(() => layOut(visibleTree(index, folded)), [index, folded]);
  const viewport = useViewport();
  const { open, shift } = viewport;
  const isPrinting = useIsPrinting();
  const takesFocus = useRef(false);
  const anchor = useRef<Spot | null>(null);

  // The first look: whole, or the unit in the middle. Only when the answer changes, not when something is folded.
  const first = useRef(layout);
  useEffect(() => open(first.current.box), [open]);

  // What was folded or unfolded stays where it was on the screen.
  useLayoutEffect(() => {
    const before = anchor.current;
    const after = before === null ? undefined : layout.byId.get(before.id);
    anchor.current = null;
    if (before !== null && after !== undefined) shift(before.x - after.x, before.y - after.y);
  }, [layout, shift]);

  const spot = layout.byId.get(picked) ?? layout.spots[0];

  const pick = (next: Spot, how: 'key' | 'pointer') => {
    takesFocus.current = how === 'key';
    setPicked(next.id);
    if (how === 'key') viewport.reveal(boxOfSpot(next));
  };
  const toggle = (each: Spot) => {
    if (each.side === 'root' || each.branch.outward.length === 0) return;
    const isFolded = folded.has(each.id);
    anchor.current = each;
    setFolded(isFolded ? without(folded, each.id) : new Set([...folded, each.id]));
    setSaid(t(isFolded ? 'said.unfolded' : 'said.folded', { name: nodeWords(each.branch.node).name }));
  };
  const openPage = (each: Spot) => {
    const href = nodeHref(each.branch.node);
    if (href !== null) router.push(href);
  };
  const onKey = (event: KeyboardEvent<HTMLElement>) => {
    if (spot === undefined || event.altKey || event.ctrlKey || event.metaKey) return;
    const { key } = event;
    if (key in ARROWS) {
      const next = neighbour(layout, spot, ARROWS[key as keyof typeof ARROWS]);
      if (next !== null) pick(next, 'key');
      else if (spot.branch.isFolded && !key.endsWith('p') && !key.endsWith('n')) toggle(spot);
    } else if (key === 'Home') pick(layout.spots[0] ?? spot, 'key');
    else if (key === ' ') toggle(spot);
    else if (key === 'Enter') openPage(spot);
    else if (key === '+') viewport.zoomBy(1.4);
    else if (key === '-') viewport.zoomBy(1 / 1.4);
    else return;
    event.preventDefault();
  };
  const withSpot = (how: (spot: Spot) => void) => (id: string) => {
    const found = layout.byId.get(id);
    if (found !== undefined) how(found);
  };
  const actions = useSteadyActions({
    pick: withSpot((each) => pick(each, 'pointer')),
    toggle: withSpot(toggle),
    open: withSpot(openPage),
    onKey,
    zoom: viewport.zoomBy,
    fit: () => viewport.fit(layout.box),
    fold: () => setFolded(allFolded(answer)),
    unfold: () => setFolded(new Set()),
  });
  if (spot === undefined) return null;

  const [shown, count] = [layout.spots.length, answer.nodes.length];
  return (
    <div className={classes.picture}>
      <GraphTools onZoom={actions.zoom} onFit={actions.fit} onFold={actions.fold} onUnfold={actions.unfold} />
      <p className={classes.quiet}>
        {shown === count ? t('countAll', { count }) : t('count', { shown, count })}{' '}
        {answer.left > 0 && t('left', { left: answer.left, count })}
      </p>
      {isPrinting && <GraphPages layout={layout} />}
      <div className={`${classes.stage} rk-no-print`}>
        <GraphCanvas
          unit={answer.unit}
          layout={layout}
          picked={spot.id}
          viewport={viewport}
          takesFocus={takesFocus}
          actions={actions}
        />
        <NodePanel answer={answer} spot={spot} onToggle={actions.toggle} />
      </div>
      <GraphLegend />
      <p className={`${classes.quiet} rk-no-print`}>{t('help')}</p>
      <p role="status" className={classes.unseen}>
        {said}
      </p>
    </div>
  );
}

function without(ids: ReadonlySet<string>, gone: string): Set<string> {
  return new Set([...ids].filter((id) => id !== gone));
}
