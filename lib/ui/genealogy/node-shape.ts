import {
  type Icon,
  IconBrush,
  IconBucketDroplet,
  IconChartLine,
  IconCircleDot,
  IconCpu,
  IconDisc,
  IconFileCode,
  IconFrame,
  IconGridDots,
  IconPackage,
  IconSquareDot,
  IconStack2,
  IconTools,
  IconTruckDelivery,
  IconUser,
} from '@tabler/icons-react';
import type { ItemKind } from '@/lib/domain/events/vocabulary';
import type { GenealogyNode } from '@/lib/domain/genealogy/graph/genealogy-graph';

const ITEM_SHAPES: Record<ItemKind, Icon> = {
  reel: IconDisc,
  lot: IconStack2,
  paste: IconBucketDroplet,
  stencil: IconGridDots,
  squeegee: IconBrush,
  carrier: IconFrame,
  profile: IconChartLine,
  firmware: IconFileCode,
  fixture: IconTools,
};

const SHAPES: Record<Exclude<GenealogyNode['kind'], 'item'>, Icon> = {
  unit: IconCpu,
  work: IconSquareDot,
  person: IconUser,
  container: IconPackage,
  shipment: IconTruckDelivery,
};

/** The shape that says what a node is, beside its words. */
export function nodeShape(node: GenealogyNode): Icon {
  if (node.kind !== 'item') return SHAPES[node.kind];
  return node.itemKind === null ? IconCircleDot : ITEM_SHAPES[node.itemKind];
}
