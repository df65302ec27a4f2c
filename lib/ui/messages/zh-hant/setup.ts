import type { Translation } from '@/lib/ui/messages/translation';

/** See the English words of the same name. */
export const setup: Translation['setup'] = {
  title: '第一位系統管理員',
  hint: '此連結只能使用一次。系統管理員會為其他人設定工號、角色與 PIN 碼。',
  badge: '工號',
  badgeHint: '如工號卡上所印或編碼的，例如 op-101。',
  name: '姓名',
  password: '密碼',
  passwordHint: '至少 12 個字元，用於辦公桌。',
  pin: 'PIN 碼',
  pinHint: '4 至 8 位數字，用於站點。',
  submit: '建立系統管理員',
  closed: {
    title: '此連結無效',
    text: '它已使用、超過一天，或已印出新的連結。沒有系統管理員時，重新啟動伺服器會印出新的連結。',
    signIn: '前往登入',
  },
};
