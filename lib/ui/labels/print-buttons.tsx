'use client';

import { TextInput } from '@mantine/core';
import { IconFileTypePdf, IconPrinter } from '@tabler/icons-react';
import { useState } from 'react';
import { useTranslations } from 'use-intl';
import { z } from 'zod';
import { refusalSchema } from '@/lib/domain/gate/question';
import type { Refusal } from '@/lib/domain/gate/refusals';
import type { LabelsPageProps } from '@/lib/ui/labels/labels-page';
import { BigButton } from '@/lib/ui/shop/big-button';
import classes from '@/lib/ui/shop/shop.module.css';
import { ReasonList } from '@/lib/ui/verdict/reason-list';

const answerSchema = z.object({ refusals: z.array(refusalSchema).optional() });

type Outcome = 'open' | 'sending' | 'recorded' | 'failed' | { refusals: Refusal[] };

/** Prints what is shown: the server records each code first, and only then gives out the file or lets the browser print. */
export function PrintButtons({ form, stock, codes, labels, printedBefore }: LabelsPageProps) {
  const t = useTranslations('labels');
  const [reason, setReason] = useState('');
  const [outcome, setOutcome] = useState<Outcome>('open');
  const needsReason = printedBefore.length > 0;

  const print = async (as: 'pdf' | 'page'): Promise<void> => {
    setOutcome('sending');
    const { kind, symbol, copies } = form;
    const skip = stock.kind === 'sheet' ? form.skip : 0;
    const given = reason.trim();
    const order = { kind, codes, symbol, copies, skip, stock, as, ...(given !== '' && { reason: given }) };
    try {
      const response = await fetch('/api/labels', {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify(order),
      });
      if (response.status === 409) {
        setOutcome({ refusals: answerSchema.parse(await response.json()).refusals ?? [] });
        return;
      }
      if (!response.ok) throw new Error(`The server answered ${response.status}.`);
      setOutcome('recorded');
      if (as === 'pdf') save(await response.blob());
      else window.print();
    } catch {
      setOutcome('failed');
    }
  };
  const isReady = outcome !== 'sending' && (!needsReason || reason.trim() !== '');
  return (
    <section className={classes.card} data-meaning="act" aria-label={t('print')}>
      <h2>{t('total', { labels: labels.length * form.copies })}</h2>
      {needsReason && (
        <>
          <p className={classes.strip} data-meaning="caution">
            {t('before', { count: printedBefore.length, codes: printedBefore.slice(0, 5).join(', ') })}
          </p>
          <TextInput
            size="xl"
            label={t('reason')}
            value={reason}
            maxLength={2000}
            autoComplete="off"
            onChange={(event) => setReason(event.currentTarget.value)}
          />
        </>
      )}
      <div className={classes.row}>
        <BigButton look="act" shape={IconFileTypePdf} isDisabled={!isReady} onPress={() => void print('pdf')}>
          {t('pdf')}
        </BigButton>
        <BigButton shape={IconPrinter} isDisabled={!isReady} onPress={() => void print('page')}>
          {t('browser')}
        </BigButton>
      </div>
      <div role="status">
        {outcome === 'recorded' && t('recorded')}
        {outcome === 'sending' && t('sending')}
        {outcome === 'failed' && t('failed')}
      </div>
      {typeof outcome === 'object' && <ReasonList reasons={outcome.refusals} />}
    </section>
  );
}

function save(file: Blob): void {
  const address = URL.createObjectURL(file);
  const link = document.createElement('a');
  link.href = address;
  link.download = 'labels.pdf';
  link.click();
  URL.revokeObjectURL(address);
}
