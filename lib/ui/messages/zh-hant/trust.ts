import type { Translation } from '@/lib/ui/messages/translation';

/** See the English words of the same name. */
export const trust: Translation['trust'] = {
  title: '信任此伺服器',
  why: '瀏覽器只允許它信任的伺服器使用相機與離線作業。本廠的伺服器自建了憑證授權單位（CA）；信任它的裝置只信任此伺服器，不會信任廠外的任何東西：它只能為私人網路的位址與此伺服器的名稱作保。',
  once: '每台裝置只需做一次，約一分鐘。',
  download: { title: '1. 下載 CA 憑證', link: '下載憑證', until: '有效期限' },
  compare: {
    title: '2. 核對指紋',
    text: '必須與伺服器啟動時顯示的相同。裝置會在憑證的詳細資料中顯示（SHA-256）。若不相同，表示有人介於您與伺服器之間：請勿安裝，並詢問伺服器管理人員。',
  },
  install: {
    title: '3. 安裝憑證',
    android: {
      name: 'Android',
      first: '開啟「設定」，搜尋「CA 憑證」（位於「安全性」、「更多安全性設定」、「從裝置儲存空間安裝」）。',
      second: '選「CA 憑證」，在警告中按「仍要安裝」，並輸入裝置的 PIN 碼。',
      third: '從下載項目中選 reelkin-authority.crt 檔案。',
    },
    ipados: {
      name: 'iPad 與 iPhone',
      first: '用 Safari 下載並允許描述檔。開啟「設定」，點「已下載描述檔」，再點「安裝」。',
      second: '開啟「設定」、「一般」、「關於本機」、「憑證信任設定」。',
      third: '為名稱開頭是「Reelkin on」的憑證開啟完全信任。',
    },
    windows: {
      name: 'Windows',
      first: '開啟下載的檔案，選「安裝憑證」、「本機電腦」。',
      second: '選「將所有憑證放入以下的存放區」：「受信任的根憑證授權單位」。',
      third: '完成後，重新開啟瀏覽器。',
    },
    other: {
      name: 'Linux，以及有自己憑證存放區的瀏覽器',
      first: 'Chromium：「設定」、「隱私權和安全性」、「安全性」、「管理憑證」，匯入並設為信任。',
      second:
        'Firefox：「設定」、「隱私權與安全性」、「檢視憑證」、「憑證機構」、「匯入」，信任它可識別網站。',
      third: '受管理的裝置由其管理系統派送。',
    },
    clock: '裝置的日期誤差須在一年左右以內，否則所有憑證都會被當成錯誤。',
  },
  open: {
    title: '4. 開啟 Reelkin',
    link: '開啟 {address}',
    warning: '若瀏覽器仍對連線提出警告，表示裝置尚未信任該 CA。',
  },
};
