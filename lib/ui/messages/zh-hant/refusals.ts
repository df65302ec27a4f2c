import type { Translation } from '@/lib/ui/messages/translation';

/** See the English words of the same name. */
export const refusals: Translation['refusals'] = {
  malformed: { title: '無法辨識', text: '記錄缺少內容或含有不允許的內容：{errors}' },
  event_id_reused: { title: '已使用過', text: '此記錄先前已以不同內容傳送。請重新掃描以建立新記錄。' },
  time_in_future: { title: '時鐘過快', text: '此記錄的時間在未來。請校正本裝置的時鐘。' },
  device_seq_reused: {
    title: '序號已使用',
    text: '裝置 {device} 的另一筆記錄已使用序號 {deviceSeq}：本平板是由備份還原的。它會自動改用新名稱並重新傳送。',
  },
  not_vouched: {
    title: '工號未確認',
    text: '沒有資料顯示 {operator} 曾在記錄此事的裝置上登入。請詢問 {operator}，再予以確認或作廢。',
  },
  splices_itself: { title: '同一捲料', text: '{item} 不能與自己接料。請掃描新料捲。' },
  reprint_without_reason: { title: '已列印過', text: '{id} 的標籤已列印過。請說明為何再印，並移除舊標籤。' },
  not_permitted: { title: '角色權限不足', text: '您的角色不能記錄此項。請找有權限的人或系統管理員。' },
  unknown_station: { title: '站點不明', text: '工廠沒有站點 {station}。請確認代碼，或洽系統管理員。' },
  unknown_operator: { title: '工號不明', text: '工廠沒有工號 {operator}。請重新掃描，或洽系統管理員。' },
  unknown_product: { title: '產品型號不明', text: '工廠沒有產品 {product} 版本 {revision}。' },
  unknown_unit: { title: '產品不明', text: '產品 {unit} 從未投產。請重新掃描，或先投產。' },
  unknown_item: { title: '物料不明', text: '物料 {item} 從未入庫。請重新掃描，或先辦理進料。' },
  unknown_container: { title: '箱號不明', text: '{container} 從未裝過任何東西。請重新掃描。' },
  unknown_slot: { title: '料站不明', text: '站點 {station} 沒有料站 {slot}。' },
  unknown_hold: { title: '扣留不明', text: '沒有事件 {hold} 的扣留。' },
  serial_pattern_mismatch: {
    title: '不是此產品的序號',
    text: '{unit} 不符合此產品的序號格式（{expected}）。請確認標籤與產品。',
  },
  already_started: { title: '已投產', text: '產品 {unit} 已投產過。請掃描下一個。' },
  already_received: { title: '已入庫', text: '物料 {item} 已辦理過入庫。' },
  scrapped: { title: '已報廢', text: '產品 {unit} 已報廢。請移出產線。' },
  already_shipped: { title: '已出貨', text: '{subject} 已隨出貨單 {shipment} 出貨。必須先辦理退回。' },
  already_packed: { title: '已裝箱', text: '產品 {unit} 在箱 {container} 中。請先取出。' },
  inside_another_unit: { title: '在另一產品內', text: '產品 {unit} 在 {outer} 內。請改裝 {outer}。' },
  on_hold: {
    title: '扣留中',
    text: '{kind, select, unit {產品} item {物料} lot {批號} container {箱} other {}} {id} 扣留中：{reason}',
  },
  open_failure: {
    title: '不良未排除',
    text: '產品 {unit} 在 {operation} 不良。請維修後再送回 {operation}。',
  },
  not_on_route: {
    title: '不在流程內',
    text: '產品 {unit} 的流程沒有 {operation}。{has_expected, select, no {} other {下一站是 {expected}。}}',
  },
  wrong_step: {
    title: '站別錯誤',
    text: '產品 {unit} 必須先通過 {expected}（步驟 {step}）才能進 {operation}。',
  },
  not_qualified: {
    title: '未取得資格',
    text: '工號 {operator} 沒有 {operation} 的作業資格。須由具資格者作業。',
  },
  slot_empty: {
    title: '料站是空的',
    text: '{station} 的料站 {slot} 沒有料。{has_expected, select, no {} other {需要 {expected}。}}',
  },
  wrong_kind: { title: '物料種類錯誤', text: '{item} 是{kind}；{station} 的料站 {slot} 應放{expected}。' },
  wrong_part: {
    title: '料號錯誤',
    text: '{has_position, select, yes {裝在 {unit} 位置 {position} 的 {item} 是 {has_part, select, no {料號不明} other {{part}}}；BOM 為 {expected}。由品保決定。} other {{station} 的料站 {slot} 需要 {expected}；{item} 是 {has_part, select, no {料號不明} other {{part}}}。請取下並停線。}}',
  },
  retired: { title: '已停用', text: '物料 {item} 不得再使用。' },
  not_in_slot: { title: '不在該料站', text: '{item} 不在 {station} 的料站 {slot}。' },
  not_in_container: {
    title: '不在該箱',
    text: '{has_unit, select, no {{container} 不在 {from} 中} other {產品 {unit} 不在 {container} 中}}。',
  },
  not_inside: { title: '不在該產品內', text: '產品 {unit} 不在 {from} 內。' },
  already_inside: { title: '已在另一產品內', text: '產品 {unit} 在 {outer} 內。請先拆出。' },
  would_contain_itself: { title: '會包含自己', text: '{subject} 不能放入 {into}：它就在外層。' },
  unfinished: {
    title: '未完工',
    text: '產品 {unit} 尚未完工。{has_expected, select, no {它沒有可完成的流程。} other {下一站是 {expected}（步驟 {step}）。}}',
  },
  unsigned: { title: '未簽核', text: '產品 {unit} 沒有品保簽核。退回前的簽核已失效。' },
  unknown_exception: { title: '不是例外', text: '事件 {event} 沒有違反規則，或從未記錄。' },
  exception_already_cleared: { title: '已處理', text: '此例外先前已處理。' },
  hold_already_released: { title: '已解除', text: '此扣留先前已解除。' },
  void_of_void: { title: '作廢不可再作廢', text: '用來作廢其他事件的事件不能再作廢。' },
};
