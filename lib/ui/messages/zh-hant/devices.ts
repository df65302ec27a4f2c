import type { Translation } from '@/lib/ui/messages/translation';

/** See the English words of the same name. */
export const devices: Translation['devices'] = {
  title: '裝置',
  asOf: '截至 {time}',
  summary:
    '{owing, plural, =0 {沒有裝置欠事件} other {# 台裝置欠事件}}{lost, plural, =0 {} other {，# 台已遺失}}',
  count: '{total, plural, other {# 台裝置}}',
  shown: '顯示最要緊的 {count, number} 台：先列欠事件的，再列已遺失的，最後列最近的。',
  hint: '每台裝置的事件自 1 起連續編號，缺少的號碼就是仍在裝置上、或已隨裝置遺失的事件。只要還有缺號，任何答案都不完整。裝置在最後一號之後做了什麼，這裡看不到。',
  columns: {
    device: '裝置',
    state: '狀態',
    owes: '缺少',
    since: '自',
    lastSeen: '最後連線',
    where: '最後地點',
    doubt: '時鐘誤差',
    actions: '決定',
  },
  state: { owing: '欠事件', lost: '遺失', quiet: '無聲', recent: '正常' },
  missing: '{count, plural, other {# 筆事件}}：號碼 {numbers}。',
  after: '號碼 {highest} 之後無人知曉。',
  nothing: '至號碼 {highest} 無缺',
  spoken: '之後又送來事件：並未遺失。',
  never: '從未',
  doubt: '{doubt}',
  doubtSmall: '不到一秒',
  doubtUnknown: '不明',
  retire: {
    label: '停用',
    labelOf: '停用 {device}',
    title: '將 {device} 以遺失停用？',
    text: '僅用於不會再回來的裝置：被竊、損壞、資料已清除。若還能開機，請先連上網路，它會送出所欠的事件。停用後，每個答案都會永久註明此裝置的事件已遺失。若它再度送來事件，仍會記錄。',
    confirm: '以遺失停用',
  },
  bringBack: {
    label: '並未遺失',
    labelOf: '{device} 並未遺失',
    title: '{device} 其實並未遺失？',
    text: '這會作廢它的停用。仍缺少的事件將重新算作所欠。',
    confirm: '並未遺失',
  },
};
