import type { Translation } from '@/lib/ui/messages/translation';

/** See the English words of the same name. */
export const offline: Translation['offline'] = {
  opening: '開啟中…',
  needsServer: {
    title: '伺服器無回應',
    text: '此畫面需要伺服器，但伺服器無回應。站點可以繼續作業。',
    again: '再試一次',
    station: '前往站點',
  },
  signIn: { title: '現在由誰作業？', text: '伺服器無回應。最近在本平板登入過的人可以繼續使用。' },
};
