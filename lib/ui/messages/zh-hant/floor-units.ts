import type { Translation } from '@/lib/ui/messages/translation';

/** See the English words of the same name. */
export const floorUnits: Translation['floorUnits'] = {
  title: '現場的產品',
  back: '現場',
  count: '{count, plural, =0 {沒有產品} other {# 台產品}}',
  station: '在 {station}',
  allStations: '所有站點',
  places: '所在',
  troubles: '問題',
  trouble: { all: '全部', failed: '未排除不良', held: '扣留中', unsigned: '未簽核' },
  unsigned: '尚未簽核',
  columns: { unit: '產品', product: '產品型號', where: '地點', why: '原因', since: '已' },
  pages: '第 {page, number} 頁，共 {pages, number} 頁',
  next: '下一頁',
  previous: '上一頁',
  list: '清單：{count, number} {what}',
  doneList: '清單：{station} 最近一小時 {count, number} 台',
  waitingAll: '各站點的所有產品',
  unsignedAll: '庫存中未簽核的產品',
};
