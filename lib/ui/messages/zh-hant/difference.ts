import type { Translation } from '@/lib/ui/messages/translation';

/** See the English words of the same name. */
export const difference: Translation['difference'] = {
  title: '有何變動',
  link: '某時以來有何變動…',
  heading: {
    item: '物料 {code} 用於何處：有何變動',
    lot: '批號 {code} 用於何處：有何變動',
    part: '料號 {code} 用於何處：有何變動',
    station: '在 {code} 過站的產品：有何變動',
    operator: '由 {code} 作業的產品：有何變動',
    time: '某段時間內過站的產品：有何變動',
  },
  form: {
    title: '哪兩個時刻之間？',
    since: '自',
    sinceHint: '報告送出的時刻。',
    until: '至',
    untilHint: '留空：現在。',
    submit: '比較',
    zone: '兩者都指到那時為止已送達此處的資料，以 {zone} 的時鐘為準。',
    order: '第二個時刻須晚於第一個。',
  },
  back: '現在的答案',
  reported: '當時所知的答案',
  csv: '所有變動的 CSV',
  ask: {
    title: '請給起始時刻',
    text: '請輸入報告送出的時刻，即可看到之後有哪些產品加入或離開答案，以及是哪個事件造成的。',
  },
  tooMany: {
    title: '產品太多，無法比較',
    text: '需要檢查 {units, number} 台產品，上限為 {max, number} 台。請改問單一物料，而不是批號或料號；或取當時所知答案與現在答案的 CSV 檔。',
  },
  size: '{time}：{units, plural, other {# 台產品}}（確定 {certain, number}，可能 {possible, number}）',
  kind: {
    label: '變動',
    joined: '加入',
    left: '離開',
    certainty: '確定程度改變',
    relation: '關係改變',
    joinedText: '不在報告中。也請扣留並追溯。',
    leftText: '在報告中，但已不在答案中。',
    certaintyText: '原為確定、現為可能，或相反。',
    relationText: '確定程度不變；含有、曾含有或接觸過有改變。',
    units: '{count, plural, other {台產品}}',
  },
  change: {
    joined: '加入',
    left: '離開',
    certain: '現為確定',
    possible: '現僅可能',
    relation: '關係改變',
  },
  none: {
    title: '沒有變動',
    text: '每台產品在答案中都和之前相同。{late, plural, =0 {期間沒有送達與此有關的事件。} other {期間送達 # 筆可能有關的事件，但沒有改變任何結果。}}',
  },
  events: {
    title: '由哪個事件造成',
    count: '{events, plural, other {# 筆事件}}，依送達順序',
    arrived: '{time} 送達',
    arrivedFrom: '{time} 由裝置 {device} 送達',
    refused: '它被拒絕，只改變了裝置所欠的編號。',
    about: '相關對象',
    owing: '它使裝置所欠的編號改變。',
    voids: '它作廢了：',
    among:
      '{from} 至 {to} 送達的 {count, number} 筆事件之一。數量太多，無法一次分辨：請比較更接近的兩個時刻。',
    amongTitle: '無法分辨',
  },
  units: {
    caption: '因此變動的產品：{count, plural, other {# 台}}',
    unit: '產品',
    change: '變動',
    before: '之前',
    after: '之後',
    out: '不在答案中',
  },
  listed: '此處依序號列出 {count, number} 台變動產品中的前 {shown, number} 台；CSV 檔有全部。',
  leavesOut:
    '盤點所說的不在這兩個答案中：此料號的料盤太多，無法逐步核算。現在的答案與當時所知的答案，會列出因盤點不符而為可能的產品。',
};
