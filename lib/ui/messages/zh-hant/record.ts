import type { Translation } from '@/lib/ui/messages/translation';

/** See the English words of the same name. */
export const record: Translation['record'] = {
  sending: '正在傳送 {count, plural, other {# 筆}}…',
  retrying: '伺服器無回應。{count, plural, other {# 筆記錄}}保存在本裝置，稍後再傳送。',
  signed_out: '您的登入已結束。{count, plural, =0 {} other {# 筆記錄保存在本裝置。}}請重新登入以繼續。',
  clock_ahead: '本裝置的時鐘過快。{count, plural, other {# 筆記錄}}等待中：請校正時鐘。',
  contact: {
    online: '伺服器正常',
    offline: '伺服器無回應',
    waiting: '{count, plural, =0 {無待傳記錄} other {# 筆待傳}}',
    last: '上次連線 {clock}',
    never: '尚未連線',
  },
  update: { text: '有新版本。這裡已記錄的資料不會遺失。', take: '立即使用' },
  signIn: '登入',
  sendNow: '立即傳送',
  sendingOne: '記錄中…',
  countDoubt: { ask: '多於原有的 {known, number}。正確嗎？', save: '是，儲存 {quantity, number}' },
  fault: {
    empty: '此欄必填。',
    invalid_type: '此欄必填。',
    invalid_value: '請從清單中選擇。',
    not_a_number: '這不是數字。',
    too_small: '數值太小。',
    too_big: '數值太大。',
    too_long: '內容太長。',
    unprintable: '含有無法列印的字元。',
    space_at_end: '開頭或結尾有空格。',
    other: '不接受此內容。',
  },
  trouble: {
    unreachable: '伺服器無回應。',
    signed_out: '您的登入已結束。',
    not_permitted: '您的角色不能查看此內容。',
    not_found: '這裡沒有此資料。',
  },
  tryAgain: '再試一次',
  loading: '載入中…',
  problem: { title: '未記錄：{what}', titleOf: '未記錄：{what}，{subject}', understood: '知道了' },
};
