import type { Translation } from '@/lib/ui/messages/translation';

/** See the English words of the same name. */
export const verdict: Translation['verdict'] = {
  go: { word: '通過', text: '通過：可以作業。' },
  stop: { word: '停止', text: '不通過：請勿作業。' },
  caution: { word: '確認', text: '已記錄，但違反規則。此產品已被扣留。' },
  scan: { word: '掃描', text: '請掃描下一個。' },
  wait: { word: '等候', text: '另一台產品作業中。' },
  busy: { word: '等候', text: '查詢中…' },
  reasons: '原因',
  next: '下一站：{operation}，步驟 {step}',
};
