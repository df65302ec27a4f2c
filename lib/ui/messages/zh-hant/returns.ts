import type { Translation } from '@/lib/ui/messages/translation';

/** See the English words of the same name. */
export const returns: Translation['returns'] = {
  title: '退貨',
  scan: '掃描退回的產品',
  ready: '請掃描退回的產品。',
  looking: '查詢 {code} 中…',
  unanswered: '{code} 沒有回應。請重新掃描。',
  unknown: '不通過：產品 {code} 從未投產。',
  form: {
    title: '將 {unit} 收為退貨',
    customer: '客戶',
    reference: '客戶編號（選填）',
    symptom: '現象或錯誤代碼（選填）',
    submit: '收下退貨',
    cancel: '另一台',
  },
  done: '{unit} 已收為退貨。',
  stopped: '不通過：{unit} 的退貨未記錄。',
  toUnit: '查看 {unit} 的完整履歷',
  about: {
    title: '{unit} 的已知資料',
    product: '產品型號',
    place: '先前位置',
    shipment: '出貨單',
    customer: '客戶',
    signed: '簽核',
    holds: '扣留',
    inside: '位於',
    failure: '未排除的不良',
    yes: '是',
    no: '否',
    nothing: '–',
  },
  notShipped: '記錄中 {unit} 並未出貨。請確認標籤；仍可收下退貨。',
};
