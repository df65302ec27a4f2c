import { useTimeZone, useTranslations } from 'use-intl';
import type { GenealogyEdge, GenealogyNode } from '@/lib/domain/genealogy/graph/genealogy-graph';
import { formatMoment } from '@/lib/ui/format-moment';

/** The words of a node: what it is, its code, and what else is known of it. */
export type NodeWords = { kind: string; name: string; details: string[] };

/** Gives the words of nodes and of the lines between them, the same on cards, in the panel and for screen readers. */
export function useNodeWords() {
  const t = useTranslations('genealogy');
  const tKind = useTranslations('tags.itemKind');
  const tRelation = useTranslations('tags.relation');
  const tCertainty = useTranslations('tags.certainty');
  const timeZone = useTimeZone() ?? 'UTC';
  const timeOf = (instant: string) => formatMoment(Date.parse(instant), { timeZone, precision: 'minute' });

  const countWords = (kinds: GenealogyNode['more']): string =>
    kinds.map(({ kind, count }) => t(`kinds.${kind}`, { count })).join(', ');

  const edgeWords = (edge: GenealogyEdge): string[] => {
    const { relation, certainty, slots, positions } = edge;
    return [
      ...(relation === null ? [] : [tRelation(relation)]),
      ...(edge.link === 'draw' ? [tCertainty(certainty)] : []),
      ...(slots.length > 0 ? [t('slot', { slots: slots.join(', ') })] : []),
      ...(positions.length > 0 ? [t('positions', { positions: positions.join(', ') })] : []),
    ];
  };

  const nodeWords = (node: GenealogyNode): NodeWords => {
    switch (node.kind) {
      case 'unit': {
        const product = node.product === null ? [] : [`${node.product} ${node.revision ?? ''}`.trim()];
        return {
          kind: t('kind.unit'),
          name: node.code,
          details: [...product, ...(node.isFollowed ? [] : [t('notFollowed')])],
        };
      }
      case 'work': {
        const { station, operation, from, to, failed } = node;
        const isLong = timeOf(from) !== timeOf(to);
        return {
          kind: t('kind.work'),
          name: station ?? t('noStation'),
          details: [
            ...(operation === null ? [] : [operation]),
            isLong ? t('times', { from: timeOf(from), to: timeOf(to) }) : timeOf(from),
            ...(failed > 0 ? [t('failed', { count: failed })] : []),
          ],
        };
      }
      case 'item':
        return {
          kind: node.itemKind === null ? t('kind.item') : tKind(node.itemKind),
          name: node.code,
          details: [
            ...(node.part === null ? [] : [t('part', { part: node.part })]),
            ...(node.lot === null ? [] : [t('lot', { lot: node.lot })]),
          ],
        };
      case 'person':
        return { kind: t('kind.person'), name: node.code, details: node.name === null ? [] : [node.name] };
      case 'container':
        return { kind: t('kind.container'), name: node.code, details: [] };
      case 'shipment':
        return {
          kind: t('kind.shipment'),
          name: node.code,
          details: [t('customer', { customer: node.customer })],
        };
      default:
        return node satisfies never;
    }
  };

  return { nodeWords, edgeWords, countWords };
}
