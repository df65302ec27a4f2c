import { IconChevronLeft, IconChevronRight } from '@tabler/icons-react';
import { memo } from 'react';
import { countKinds } from '@/lib/domain/genealogy/graph/count-kinds';
import classes from '@/lib/ui/genealogy/genealogy.module.css';
import type { Spot } from '@/lib/ui/genealogy/lay-out';
import { nodeShape } from '@/lib/ui/genealogy/node-shape';
import { useNodeWords } from '@/lib/ui/genealogy/use-node-words';
import { CertaintyTag } from '@/lib/ui/tags/certainty-tag';
import { PlaceTag } from '@/lib/ui/tags/place-tag';
import { RelationTag } from '@/lib/ui/tags/relation-tag';

/**
 * What a node says on its card: its shape and code, how it relates, and what is folded away behind it. From afar no
 * word can be read: what is left is where there is how much.
 */
export const NodeCard = memo(function NodeCard({ spot, isFar = false }: { spot: Spot; isFar?: boolean }) {
  const { node, edge } = spot.branch;
  return (
    <div
      className={classes.card}
      data-kind={node.kind}
      data-side={spot.side}
      data-relation={edge?.relation ?? undefined}
      data-certainty={edge?.certainty}
    >
      {!isFar && <CardWords spot={spot} />}
    </div>
  );
});

function CardWords({ spot }: { spot: Spot }) {
  const { nodeWords } = useNodeWords();
  const { branch, side } = spot;
  const { node, isFolded, outward } = branch;
  const Shape = nodeShape(node);
  const Chevron = (side === 'upstream') === isFolded ? IconChevronLeft : IconChevronRight;
  const isFoldable = side !== 'root' && outward.length > 0;
  return (
    <>
      <Shape aria-hidden className={classes.shape ?? ''} />
      <span className={classes.text}>
        <strong>{nodeWords(node).name}</strong>
        <small>
          <CardLine spot={spot} />
        </small>
      </span>
      {isFoldable && (
        <span className={classes.toggle} data-toggle aria-hidden="true">
          <Chevron />
          {isFolded && outward.length}
        </span>
      )}
    </>
  );
}

function CardLine({ spot }: { spot: Spot }) {
  const { nodeWords, countWords } = useNodeWords();
  const { node, edge, isFolded, outward } = spot.branch;
  const { details } = nodeWords(node);
  const relation = edge?.relation ?? null;
  if (edge !== null && edge.link === 'draw' && relation !== null)
    return (
      <>
        <RelationTag relation={relation} /> <CertaintyTag certainty={edge.certainty} />{' '}
        {edge.slots.join(', ')}
      </>
    );
  if (node.kind === 'unit')
    return (
      <>
        {relation === null ? <PlaceTag place={node.place} /> : <RelationTag relation={relation} />}{' '}
        {details[0]}
      </>
    );
  if (node.kind === 'work' && isFolded) return countWords(countKinds(outward));
  return details.join(' · ');
}
