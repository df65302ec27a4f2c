import type { Translation } from '@/lib/ui/messages/translation';

/** See the English words of the same name. */
export const wrong: Translation['wrong'] = {
  notFound: {
    title: '沒有這個頁面',
    text: '此網址不存在。若是印在標籤上的碼，請在追溯欄位掃描。',
    start: '前往現場',
    trace: '前往追溯',
  },
  failed: {
    title: '這裡發生問題',
    text: '已記錄的資料安全無虞。請再試一次；若再發生，請將此編號告知系統管理員：',
    noDigest: '已記錄的資料安全無虞。請再試一次；若再發生，請告知系統管理員。',
    again: '再試一次',
    start: '前往現場',
  },
};
