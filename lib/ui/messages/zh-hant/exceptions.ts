import type { Translation } from '@/lib/ui/messages/translation';

/** See the English words of the same name. */
export const exceptions: Translation['exceptions'] = {
  title: '例外',
  summary: '{total, plural, =0 {沒有未處理的例外} other {# 筆事件違反規則，等候品保處理}}',
  shown: '顯示最早送達的 {count, number} 筆。',
  hint: '雖違反規則，事情仍然發生了：當時沒有伺服器，或機器只回報結果。事件已記錄，並扣留其產品，直到有人解除扣留、品保在此放行，或缺少的事件送達而使其合規。',
  holds: '扣留中',
  released: '已解除扣留',
  arrived: '送達',
  columns: {
    what: '發生何事',
    broken: '違反的規則',
    where: '地點與人員',
    when: '發生時間',
    cleared: '已處理',
    actions: '決定',
  },
  device: '裝置 {device}',
  cleared: '最近處理',
  clearedBy: '{by}：{reason}',
  clear: {
    label: '處理',
    labelOf: '處理 {subject}：{event}',
    title: '處理此例外？',
    text: '事件維持原樣，並保留其違規內容。它造成的扣留會解除，其他扣留不變。請說明您的發現。',
    confirm: '確定處理',
  },
  reopen: {
    label: '重新開啟',
    labelOf: '重新開啟 {subject}：{event}',
    title: '重新開啟此例外？',
    text: '這會作廢先前的處理。已解除的扣留恢復。',
    confirm: '重新開啟',
  },
};
