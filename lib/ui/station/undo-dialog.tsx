'use client';

import { Textarea } from '@mantine/core';
import { useState } from 'react';
import { useTranslations } from 'use-intl';
import type { RecentResult } from '@/lib/domain/station/station-picture';
import { useRecorder } from '@/lib/ui/record/record-provider';
import { BigButton } from '@/lib/ui/shop/big-button';
import { Dialog } from '@/lib/ui/shop/dialog';
import classes from '@/lib/ui/shop/shop.module.css';

/** Voids a result, with the reason; the result keeps its place in the history. */
export function UndoDialog({
  result,
  onClose,
  onUndone,
}: {
  result: RecentResult;
  onClose: () => void;
  onUndone: () => void;
}) {
  const t = useTranslations('station.history');
  const recorder = useRecorder();
  const [reason, setReason] = useState('');
  const [isSending, setSending] = useState(false);
  const undo = async (): Promise<void> => {
    if (isSending || reason.trim() === '') return;
    setSending(true);
    const body = { event: result.event, reason: reason.trim() };
    const { answered } = await recorder.record({ type: 'event.voided', body });
    await answered;
    onUndone();
  };
  return (
    <Dialog title={t('undoTitle', { unit: result.unit })} onClose={onClose}>
      <form
        className={classes.shop}
        onSubmit={(event) => {
          event.preventDefault();
          void undo();
        }}
      >
        <p className={classes.line}>{t('undoText')}</p>
        <Textarea
          size="xl"
          label={t('reason')}
          value={reason}
          onChange={(event) => setReason(event.currentTarget.value)}
          autosize
          minRows={2}
          autoFocus
        />
        <div className={classes.row}>
          <BigButton type="submit" look="act" isDisabled={reason.trim() === '' || isSending}>
            {t('confirm')}
          </BigButton>
          <BigButton onPress={onClose}>{t('cancel')}</BigButton>
        </div>
      </form>
    </Dialog>
  );
}
