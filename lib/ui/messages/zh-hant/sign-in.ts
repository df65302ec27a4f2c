import type { Translation } from '@/lib/ui/messages/translation';

/** See the English words of the same name. */
export const signIn: Translation['signIn'] = {
  title: '登入',
  station: { title: '在站點', hint: '掃描或輸入工號，再輸入 PIN 碼。', submit: '以 PIN 碼登入' },
  desk: { title: '在辦公桌', hint: '供生管、品保與系統管理使用。', submit: '以密碼登入' },
  badge: '工號',
  pin: 'PIN 碼',
  password: '密碼',
  showPassword: '顯示或隱藏輸入內容',
  keypad: { label: 'PIN 碼數字鍵', erase: '刪除最後一碼', clear: '清除', key: '數字 {digit}' },
  refused: {
    wrong_credentials: '工號與 PIN 碼或密碼不符。請再試一次，或洽系統管理員。',
    too_many_attempts: '錯誤次數過多。請於 {minutes, plural, other {# 分鐘}}後再試。',
    unknown_here: '伺服器無回應時，本平板只認得最近兩週內以 PIN 碼在此登入過的人。',
  },
  signOut: '登出',
};
