import type { Translation } from '@/lib/ui/messages/translation';

/** See the English words of the same name. */
export const scanning: Translation['scanning'] = {
  remark: {
    separators_lost:
      '未讀取：此標籤需要分隔字元，但掃描器沒有送出。請設定掃描器送出 GS（例如 Ctrl+]），或改用相機。',
    separator_lost: '已依序號格式讀取：掃描器漏送分隔字元。請設定送出 GS（例如 Ctrl+]）。',
    no_code: '未讀取：標籤上沒有包裝號、序號、批號或料號。請掃描另一張標籤。',
    unreadable: '未讀取：掃描內容含有代碼不會有的字元。請重新掃描。',
  },
  camera: {
    title: '相機',
    open: '用相機掃描',
    close: '關閉相機',
    aim: '將條碼對準框內',
    light: '開燈',
    dark: '關燈',
    trouble: {
      insecure: '瀏覽器只允許 https 網址使用相機。請以 https 開啟本頁，或使用掃描器。',
      forbidden: '相機未獲允許。請在瀏覽器設定中允許本頁使用相機，再重新開啟。',
      missing: '本裝置沒有相機。請使用掃描器，或輸入代碼。',
      busy: '相機無法啟動，可能有其他程式正在使用。請關閉該程式後再試。',
    },
  },
  device: {
    title: '本裝置',
    text: '此處的設定只保存在本裝置。',
    language: '語言',
    languageText: '本裝置的所有畫面都以此語言顯示。',
  },
  settings: {
    title: '掃描器的輸入方式',
    prefix: '每個代碼前的字元（會去除）',
    suffix: '以什麼結束掃描',
    suffixes: { Enter: 'Enter', Tab: 'Tab', pause: '無：短暫停頓' },
    gap: '兩字元之間的最長時間，毫秒',
    gapHint: '20 至 150。無線掃描器較慢時調高；太高會把快速打字當成掃描。',
    save: '儲存',
    saved: '已儲存在本裝置。',
    bad: '須介於 20 與 150。',
    try: '掃描任一條碼試試',
    got: '代碼：{code}',
    facts: {
      packageId: '包裝號',
      serial: '序號',
      lot: '批號',
      part: '料號',
      quantity: '數量',
      supplier: '供應商',
    },
  },
};
