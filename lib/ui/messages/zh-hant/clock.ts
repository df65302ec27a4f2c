import type { Translation } from '@/lib/ui/messages/translation';

/** See the English words of the same name. */
export const clock: Translation['clock'] = {
  no_contact: '本裝置尚未連上伺服器，不知道時鐘差多少。現在記錄的時間會標示最大的不確定度。',
  set: '伺服器無回應期間，本裝置的時鐘被往{way, select, back {回} other {前}}調了 {by}。{isWide, select, yes {伺服器恢復前，無法確定事件發生的時間。} other {現在記錄的時間誤差在 {doubt} 以內。}}',
  doubtful:
    '{isWide, select, yes {伺服器恢復前，無法確定事件發生的時間：本裝置的時鐘曾在無人察覺時被往回調。} other {伺服器恢復前，現在記錄的時間誤差僅能保證在 {doubt} 以內。}}',
  wrong: '本裝置的時鐘{way, select, back {慢了} other {快了}} {by}。記錄的時間仍然正確。',
};
