import type { Arriving } from '@/lib/data/log/insert-events';
import type { Queryable } from '@/lib/data/pool';
import type { Refusal } from '@/lib/domain/gate/refusals';
import { formatInstant } from '@/lib/domain/time';

/** Keeps refused events with their reasons for audit; the first reason is the one that was answered. */
export async function insertRefusals(
  db: Queryable,
  refused: readonly (Arriving & { reasons: Refusal[] })[],
  refusedAtUs: number,
): Promise<void> {
  if (refused.length === 0) return;
  const rows = refused.map(({ event: { atUs: _, ...content }, recordedBy, reasons }) => ({
    event: content.id,
    code: reasons[0]?.code,
    refusal: reasons,
    content,
    device: content.device ?? null,
    device_seq: content.deviceSeq ?? null,
    refused_by: recordedBy,
  }));
  await db.query(
    `insert into log.refusal (event, code, refusal, content, device, device_seq, refused_at, refused_by)
     select r.event, r.code, r.refusal, r.content, r.device, r.device_seq, $2::timestamptz, r.refused_by
     from jsonb_to_recordset($1::jsonb) as r(event uuid, code text, refusal jsonb, content jsonb, device text,
       device_seq bigint, refused_by text)`,
    [JSON.stringify(rows), formatInstant(refusedAtUs)],
  );
}
