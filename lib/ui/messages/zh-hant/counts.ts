import type { Translation } from '@/lib/ui/messages/translation';

/** See the English words of the same name. */
export const counts: Translation['counts'] = {
  title: '盤點不符',
  intro:
    '每捲料的盤點都與上次盤點後產品的用量比對。差異超過該料號的允許損耗時，很可能有一次換料未掃描，該段時間的產品可能用到換料前或換料後的料捲。',
  weighed:
    '自 {since} 起 {days, number} 天，比對 {reels, number} {reels, plural, other {捲}}：{count, plural, =0 {全部相符} other {# 筆盤點不符}}。',
  agree: '所有盤點都與用量相符',
  agreeText: '記錄中看來沒有遺漏換料。',
  off: '沒有比對任何盤點',
  offText: '工廠檔中沒有料號設定損耗率（attrition），即取料時允許損失的用量比例。設定後即會比對盤點。',
  openPlant: '開啟工廠',
  reel: '料捲',
  part: '料號',
  surplus: '剩餘比用量推算的多',
  deficit: '剩餘比用量推算的少',
  surplusPieces: '多 {pieces, number, ::.#} 個',
  deficitPieces: '少 {pieces, number, ::.#} 個',
  expected: '應剩',
  expectedRange: '{min, number, ::.} 至 {max, number, ::.}',
  expectedOne: '{min, number, ::.}',
  found: '實盤',
  foundAt: '{left, number, ::.} · {time}',
  foundNone: '之後未盤點；產品用量超過原有數量',
  before: '上次盤點',
  allowed: '允許損耗',
  allowedText: '用量 {used, number, ::.} 的 {share, number, percent}：{pieces, number, ::.#} 個',
  missed: {
    title: '可能未掃描',
    none: '前後料捲都無法解釋：請重新盤點，或檢查是否拋料。',
    late: '換上 <other></other> 掃描得太晚',
    early: '換上 <recorded></recorded> 掃描得太早：當時仍在用 <other></other>',
    never: '<other></other> 曾在該處，但未掃描',
    unknown: '該處曾有一捲不明的料捲未掃描：請盤點倉庫中此料號的料捲',
    units: '{count, number} {count, plural, other {台}}',
    where: '{station}，料站 {slot}',
    show: '該段時間的產品',
    used: '{item} 用於何處',
  },
  chart: {
    title: '{item} 的應剩與實盤',
    text: '上次盤點 {before, number, ::.}，無損耗應剩 {expected, number, ::.}，實盤 {found, number, ::.}。',
    expected: '應剩',
    counted: '實盤',
    interval: '未掃描',
  },
};
