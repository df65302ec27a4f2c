'use client';

import { Button, Textarea, TextInput } from '@mantine/core';
import type { Icon } from '@tabler/icons-react';
import { type ReactNode, useState } from 'react';
import { useTranslations } from 'use-intl';
import type { DeskAction } from '@/lib/ui/desk/desk-action';
import { DeskDialog } from '@/lib/ui/desk/desk-dialog';

/** A button that asks for a reason (and a disposition, `asks`) before it records something. */
export function DeskButton({
  label,
  accessibleLabel,
  shape: Shape,
  title,
  text,
  confirm,
  isGrave = false,
  isQuiet = false,
  asks = [],
  hidden,
  action,
}: {
  label: string;
  /** The label with what it is about, where several such buttons stand on a page. */
  accessibleLabel?: string;
  shape?: Icon;
  title: string;
  text: ReactNode;
  confirm: string;
  isGrave?: boolean;
  /** For buttons that stand in every row. */
  isQuiet?: boolean;
  asks?: readonly 'disposition'[];
  hidden: Record<string, string>;
  action: DeskAction;
}) {
  const t = useTranslations('desk');
  const [isOpen, setOpen] = useState(false);
  return (
    <>
      <Button
        variant={isQuiet ? 'subtle' : 'default'}
        aria-label={accessibleLabel}
        leftSection={Shape && <Shape aria-hidden />}
        onClick={() => setOpen(true)}
      >
        {label}
      </Button>
      {isOpen && (
        <DeskDialog
          title={title}
          text={text}
          confirm={confirm}
          isGrave={isGrave}
          hidden={hidden}
          action={action}
          onClose={() => setOpen(false)}
        >
          {asks.includes('disposition') && (
            <TextInput
              name="disposition"
              label={t('disposition')}
              description={t('dispositionHint')}
              required
              withAsterisk={false}
              maxLength={2000}
              data-autofocus
              autoComplete="off"
            />
          )}
          <Textarea
            name="reason"
            label={t('reason')}
            required
            withAsterisk={false}
            maxLength={2000}
            autosize
            minRows={2}
            {...(asks.length === 0 && { 'data-autofocus': true })}
          />
        </DeskDialog>
      )}
    </>
  );
}
