import type { Translation } from '@/lib/ui/messages/translation';

/** See the English words of the same name. */
export const desk: Translation['desk'] = {
  close: '關閉',
  cancel: '取消',
  reason: '原因',
  disposition: '處置',
  dispositionHint: '如何處理：特採、重工、退回供應商、報廢…',
  refused: '未記錄',
};
