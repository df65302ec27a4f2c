import { Anchor, Button, Group } from '@mantine/core';
import Link from 'next/link';
import { memo } from 'react';
import { useTranslations } from 'use-intl';
import { countKinds } from '@/lib/domain/genealogy/graph/count-kinds';
import type { GenealogyAnswer } from '@/lib/domain/genealogy/graph/genealogy-graph';
import classes from '@/lib/ui/genealogy/genealogy.module.css';
import type { Spot } from '@/lib/ui/genealogy/lay-out';
import { nodeHref } from '@/lib/ui/genealogy/node-href';
import { useNodeWords } from '@/lib/ui/genealogy/use-node-words';

/** Relations that are told one by one. */
const LINES_MAX = 8;

/** All that is known of the picked node, and where it leads; each of its lines in words. */
export const NodePanel = memo(function NodePanel({
  answer,
  spot,
  onToggle,
}: {
  answer: GenealogyAnswer;
  spot: Spot;
  onToggle: (id: string) => void;
}) {
  const t = useTranslations('genealogy');
  const { nodeWords, edgeWords, countWords } = useNodeWords();
  const { node, isFolded, outward } = spot.branch;
  const { kind, name, details } = nodeWords(node);
  const href = nodeHref(node);
  const nameOf = (id: string): string => {
    const found = answer.nodes.find((each) => each.id === id);
    return found === undefined ? '' : nodeWords(found).name;
  };
  const lines = answer.edges.filter(
    ({ from, to, relation }) => relation !== null && (from === node.id || to === node.id),
  );
  return (
    <aside className={`${classes.panel} rk-no-print`} aria-label={t('selected')}>
      <p>
        <strong>
          {kind} <span className={classes.code}>{name}</span>
        </strong>{' '}
        {details.join(', ')}
      </p>
      <ul>
        {lines.slice(0, LINES_MAX).map((edge) => (
          <li key={`${edge.from} ${edge.to} ${edge.link}`}>
            {t(`link.${edge.link}`, { from: nameOf(edge.from), to: nameOf(edge.to) })}
            {edgeWords(edge).length > 0 && `: ${edgeWords(edge).join(', ')}`}
          </li>
        ))}
        {lines.length > LINES_MAX && <li>{t('linesMore', { count: lines.length - LINES_MAX })}</li>}
      </ul>
      {outward.length > 0 && <p>{t(`behind.${spot.side}`, { kinds: countWords(countKinds(outward)) })}</p>}
      {node.more.length > 0 && <p>{t('more', { kinds: countWords(node.more) })}</p>}
      <Group gap="xs">
        {href !== null && (
          <Anchor component={Link} href={href} prefetch={false} className={classes.open ?? ''}>
            {t('openPage')}
          </Anchor>
        )}
        {spot.side !== 'root' && outward.length > 0 && (
          <Button variant="default" onClick={() => onToggle(node.id)}>
            {t(isFolded ? 'unfoldOne' : 'foldOne')}
          </Button>
        )}
      </Group>
    </aside>
  );
});
