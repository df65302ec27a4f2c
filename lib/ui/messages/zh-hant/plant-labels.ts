import type { Translation } from '@/lib/ui/messages/translation';

/** See the English words of the same name. */
export const plantLabels: Translation['plantLabels'] = {
  badge: '這是工號 {badge}。要換人，請先按「換人」。',
  station: '這是站點 {station} 的標籤。',
  slot: '這是{has_station, select, no {} other { {station} 的}}料站 {slot}。',
  missingInner: '尚未裝入：{position} 的 {product}',
  emptyPosition: '{position} 是空的：零件已拆下，沒有裝上新的。',
  heldInside:
    '注意：{unit} 內有{kind, select, lot {批號} other {物料}} {id}，正在扣留中。產品本身未扣留；請詢問品保。原因：{reason}',
};
