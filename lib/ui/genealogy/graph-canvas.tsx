import { type KeyboardEvent, memo, type RefObject, useEffect, useMemo, useRef } from 'react';
import { useTranslations } from 'use-intl';
import classes from '@/lib/ui/genealogy/genealogy.module.css';
import { GraphLines } from '@/lib/ui/genealogy/graph-lines';
import { boxOfSpot, crosses, isIn, type Layout, type Spot, saysTheSame } from '@/lib/ui/genealogy/lay-out';
import { NodeCard } from '@/lib/ui/genealogy/node-card';
import { useNodeSentence } from '@/lib/ui/genealogy/use-node-sentence';
import type { Viewport } from '@/lib/ui/genealogy/use-viewport';

/** What can be done with the picture's nodes, by their ids; always the same object, so that no node is drawn anew for it. */
export type GraphActions = {
  pick(id: string): void;
  open(id: string): void;
  toggle(id: string): void;
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
  const seen = useMemo(() => layout.spots.filter((spot) => isIn(spot, drawn)), [layout, drawn]);
  const lines = useMemo(() => layout.lines.filter((line) => crosses(line, drawn)), [layout, drawn]);
  const away = layout.byId.get(picked);
  const spots = away === undefined || isIn(away, drawn) ? seen : [...seen, away];
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
        <GraphLines lines={lines} />
        {spots.map((spot) => {
          const { x0, y0 } = boxOfSpot(spot);
          return (
            <div key={spot.id} role="none" className={classes.place} style={{ left: x0, top: y0 }}>
              <TreeNode
                spot={spot}
                isPicked={spot.id === picked}
                isFar={isFar}
                card={spot.id === picked ? card : null}
                actions={actions}
              />
            </div>
          );
        })}
      </div>
    </div>
  );
}

type NodeProps = {
  spot: Spot;
  isPicked: boolean;
  isFar: boolean;
  card: RefObject<HTMLDivElement | null> | null;
  actions: GraphActions;
};

/** Folding makes every spot anew: a node is drawn again only when what it says has changed, not when it has moved. */
function isSame(before: NodeProps, after: NodeProps): boolean {
  return (
    before.isPicked === after.isPicked &&
    before.isFar === after.isFar &&
    before.card === after.card &&
    before.actions === after.actions &&
    saysTheSame(before.spot, after.spot)
  );
}

const TreeNode = memo(function TreeNode({ spot, isPicked, isFar, card, actions }: NodeProps) {
  const sentence = useNodeSentence();
  const { branch, id, side, depth, position, setSize } = spot;
  const isFoldable = side !== 'root' && branch.outward.length > 0;
  return (
    // The keys are taken by the tree, for whichever of its nodes has the focus.
    // biome-ignore lint/a11y/useKeyWithClickEvents: see above
    <div
      ref={card}
      role="treeitem"
      className={classes.node}
      data-node={id}
      tabIndex={isPicked ? 0 : -1}
      aria-label={sentence(branch)}
      aria-level={depth + 1}
      aria-posinset={position}
      aria-setsize={setSize}
      aria-selected={isPicked}
      {...(isFoldable && { 'aria-expanded': !branch.isFolded })}
      onFocus={() => actions.pick(id)}
      onClick={({ target }) => {
        actions.pick(id);
        if (target instanceof Element && target.closest('[data-toggle]') !== null) actions.toggle(id);
      }}
      onDoubleClick={() => actions.open(id)}
    >
      <NodeCard spot={spot} isFar={isFar} />
    </div>
  );
}, isSame);
