import type { Translation } from '@/lib/ui/messages/translation';

/** See the English words of the same name. */
export const notPermitted: Translation['notPermitted'] = {
  title: '您的角色不能開啟此畫面',
  text: '您以 {badge}（{role}）登入。請由其他角色的人操作，或請系統管理員變更您的角色。',
  home: '回到首頁',
};
