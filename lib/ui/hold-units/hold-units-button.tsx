'use client';

import { Button } from '@mantine/core';
import { IconHandStop } from '@tabler/icons-react';
import { useState } from 'react';
import { useTranslations } from 'use-intl';
import type { Certainty } from '@/lib/domain/genealogy/answer';
import { HoldUnitsDialog } from '@/lib/ui/hold-units/hold-units-dialog';
import type { HoldActions, ReadPage } from '@/lib/ui/hold-units/use-hold-batch';

/** An answer whose units may be held: how many there are, whether there may be more, and where its pages come from. */
export type HoldableAnswer = {
  counts: Record<Certainty, number>;
  isComplete: boolean;
  readPage: ReadPage;
};

/** Holds the units of an answer, one hold each; absent when there are none. */
export function HoldUnitsButton({ answer, actions }: { answer: HoldableAnswer; actions: HoldActions }) {
  const t = useTranslations('trace.hold');
  const [isOpen, setOpen] = useState(false);
  const count = answer.counts.certain + answer.counts.possible;
  // Open over an answer that has become empty, the dialog still tells what was done.
  if (count === 0 && !isOpen) return null;
  return (
    <>
      <Button leftSection={<IconHandStop aria-hidden />} onClick={() => setOpen(true)}>
        {t('label', { count })}
      </Button>
      {isOpen && <HoldUnitsDialog answer={answer} actions={actions} onClose={() => setOpen(false)} />}
    </>
  );
}
