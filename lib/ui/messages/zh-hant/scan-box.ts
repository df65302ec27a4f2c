import type { OperatorWords } from '@/lib/ui/messages/operator-words';

/** See the English words of the same name. */
export const scanBox: OperatorWords['scanBox'] = {
  submit: '輸入',
  keyboard: '螢幕鍵盤',
};
