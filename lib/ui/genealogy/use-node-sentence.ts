import { useTranslations } from 'use-intl';
import { countKinds } from '@/lib/domain/genealogy/graph/count-kinds';
import { useNodeWords } from '@/lib/ui/genealogy/use-node-words';
import type { Branch } from '@/lib/ui/genealogy/visible-tree';

/** Gives a node as a screen reader says it: what it is, how it relates, what is known of it, what is folded away. */
export function useNodeSentence(): (branch: Branch) => string {
  const t = useTranslations('genealogy');
  const { nodeWords, edgeWords, countWords } = useNodeWords();
  return ({ node, edge, isFolded, outward }) => {
    const { kind, name, details } = nodeWords(node);
    const relation = edge === null ? [] : edgeWords(edge);
    const folded =
      isFolded && outward.length > 0 ? [t('folded', { kinds: countWords(countKinds(outward)) })] : [];
    const more = node.more.length > 0 ? [t('more', { kinds: countWords(node.more) })] : [];
    return [`${kind} ${name}`, ...relation, ...details, ...folded, ...more].join(', ');
  };
}
