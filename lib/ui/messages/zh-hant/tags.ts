import type { Translation } from '@/lib/ui/messages/translation';

/** See the English words of the same name. */
export const tags: Translation['tags'] = {
  place: {
    station: '在站點',
    stock: '在庫',
    container: '已裝箱',
    shipped: '已出貨',
    returned: '已退回',
    scrapped: '已報廢',
    unknown: '位置不明',
  },
  relation: { contains: '含有', formerly: '曾含有', touched: '接觸過' },
  certainty: { certain: '確定', possible: '可能' },
  hold: { open: '扣留中', released: '已解除' },
  result: { pass: '良品', fail: '不良' },
  itemKind: {
    reel: '料捲',
    lot: '批料',
    paste: '錫膏',
    stencil: '鋼板',
    squeegee: '刮刀',
    carrier: '載具',
    profile: '爐溫曲線',
    firmware: '韌體',
    fixture: '治具',
  },
  labelKind: { unit: '產品', item: '物料', container: '箱', badge: '工號' },
  holdTarget: { unit: '產品', item: '物料', lot: '批號', container: '箱' },
};
