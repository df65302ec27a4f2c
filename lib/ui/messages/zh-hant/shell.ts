import type { Translation } from '@/lib/ui/messages/translation';

/** See the English words of the same name. */
export const shell: Translation['shell'] = {
  demo: '示範 · 虛構的工廠，內容皆非真實',
  demoLabel: '示範',
  skip: '跳到內容',
  navigation: '畫面',
  menu: { open: '開啟選單', close: '關閉選單' },
  screens: {
    floor: '現場',
    station: '站點',
    changeover: '換線上料',
    items: '進料',
    counts: '盤點核對',
    pack: '包裝出貨',
    holds: '扣留',
    exceptions: '例外',
    devices: '裝置',
    returns: '退貨',
    trace: '追溯',
    plant: '工廠',
    people: '人員',
  },
  openCount: '{count, plural, other {# 件未處理}}',
  signedInAs: '登入者 {badge}，{role}',
  thisDevice: '本裝置：掃描器與語言',
  scheme: { label: '顏色', light: '淺色', dark: '深色', auto: '依裝置' },
};
