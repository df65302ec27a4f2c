import { type KeyboardEvent, type RefObject, useEffect, useRef } from 'react';
import { useTranslations } from 'use-intl';
import classes from '@/lib/ui/genealogy/genealogy.module.css';
import { GraphLines } from '@/lib/ui/genealogy/graph-lines';
import { boxOfSpot, crosses, isIn, type Layout, type Spot } from '@/lib/ui/genealogy/lay-out';
import { NodeCard } from '@/lib/ui/genealogy/node-card';
import { useNodeSentence } from '@/lib/ui/genealogy/use-node-sentence';
import type { Viewport } from '@/lib/ui/genealogy/use-viewport';

/** What can be done with the picture's nodes; `how` says whether a key did it, which then keeps the focus. */
export type GraphActions = {
  pick(spot: Spot, how: 'key' | 'pointer'): void;
  open(spot: Spot): void;
  toggle(spot: Spot): void;
  onKey(event: KeyboardEvent<HTMLElement>): void;
};

/** The picture itself: a tree for screen readers, of which only what is near the frame is drawn. */
export function GraphCanvas({
  unit,
  layout,
  picked,
  viewport,
  takesFocus,
  actions,
}: {
  unit: string;
  layout: Layout;
  picked: string;
  viewport: Viewport;
  /** Set while the next picked node is to have the focus: a key moved it there. */
  takesFocus: RefObject<boolean>;
  actions: GraphActions;
}) {
  const t = useTranslations('genealogy');
  const { drawn, isFar, frame, layer } = viewport;
  const spots = layout.spots.filter((spot) => spot.id === picked || isIn(spot, drawn));
  const card = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (!takesFocus.current || picked === '') return;
    takesFocus.current = false;
    card.current?.focus({ preventScroll: true });
  }, [picked, takesFocus]);
  return (
    <div className={classes.frame} ref={frame}>
      <p id="genealogy-help" className={classes.unseen}>
        {t('help')}
      </p>
      <div
        ref={layer}
        className={classes.layer}
        role="tree"
        aria-label={t('tree', { unit })}
        aria-describedby="genealogy-help"
        data-far={isFar}
        onKeyDown={actions.onKey}
        tabIndex={-1}
      >
        <GraphLines lines={layout.lines.filter((line) => crosses(line, drawn))} />
        {spots.map((spot) => (
          <TreeNode
            key={spot.id}
            spot={spot}
            isPicked={spot.id === picked}
            isFar={isFar}
            card={spot.id === picked ? card : null}
            actions={actions}
          />
        ))}
      </div>
    </div>
  );
}

function TreeNode({
  spot,
  isPicked,
  isFar,
  card,
  actions,
}: {
  spot: Spot;
  isPicked: boolean;
  isFar: boolean;
  card: RefObject<HTMLDivElement | null> | null;
  actions: GraphActions;
}) {
  const sentence = useNodeSentence();
  const { branch, id, side, depth, position, setSize } = spot;
  const isFoldable = side !== 'root' && branch.outward.length > 0;
  const { x0, y0 } = boxOfSpot(spot);
  return (
    // The keys are taken by the tree, for whichever of its nodes has the focus.
    // biome-ignore lint/a11y/useKeyWithClickEvents: see above
    <div
      ref={card}
      role="treeitem"
      className={classes.node}
      style={{ left: x0, top: y0 }}
      data-node={id}
      data-far={isFar}
      tabIndex={isPicked ? 0 : -1}
      aria-label={sentence(branch)}
      aria-level={depth + 1}
      aria-posinset={position}
      aria-setsize={setSize}
      aria-selected={isPicked}
      {...(isFoldable && { 'aria-expanded': !branch.isFolded })}
      onFocus={() => actions.pick(spot, 'pointer')}
      onClick={({ target }) => {
        actions.pick(spot, 'pointer');
        if (target instanceof Element && target.closest('[data-toggle]') !== null) actions.toggle(spot);
      }}
      onDoubleClick={() => actions.open(spot)}
    >
      <NodeCard spot={spot} />
    </div>
  );
}
