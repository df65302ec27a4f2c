'use client';

import { Alert, Button, Group, Modal, Stack, Text } from '@mantine/core';
import { IconAlertOctagonFilled } from '@tabler/icons-react';
import { type FormEvent, type ReactNode, startTransition, useActionState } from 'react';
import { useTranslations } from 'use-intl';
import type { Refusal } from '@/lib/domain/gate/refusals';
import type { DeskAction } from '@/lib/ui/desk/desk-action';
import { ReasonList } from '@/lib/ui/verdict/reason-list';

/** A question before something is recorded for good: what it means, what must be said, and the words of a refusal. */
export function DeskDialog({
  title,
  text,
  confirm,
  isGrave = false,
  hidden,
  action,
  onClose,
  children,
}: {
  title: string;
  text: ReactNode;
  confirm: string;
  /** Whether it cannot be taken back. */
  isGrave?: boolean;
  hidden: Record<string, string>;
  action: DeskAction;
  onClose: () => void;
  children: ReactNode;
}) {
  const t = useTranslations('desk');
  const [refusals, submit, isPending] = useActionState(async (_before: Refusal[], form: FormData) => {
    const result = await action(form);
    if (!result.ok) return result.refusals;
    onClose();
    return [];
  }, []);
  const onSubmit = (event: FormEvent<HTMLFormElement>): void => {
    event.preventDefault();
    const form = new FormData(event.currentTarget);
    startTransition(() => submit(form));
  };
  return (
    <Modal
      opened
      onClose={onClose}
      title={title}
      closeButtonProps={{ 'aria-label': t('close'), size: 48 }}
      size="lg"
    >
      <form onSubmit={onSubmit}>
        <Stack>
          <Text>{text}</Text>
          {Object.entries(hidden).map(([name, value]) => (
            <input key={name} type="hidden" name={name} value={value} />
          ))}
          {children}
          {refusals.length > 0 && (
            <Alert
              role="alert"
              color="red"
              variant="outline"
              title={t('refused')}
              icon={<IconAlertOctagonFilled aria-hidden />}
            >
              <ReasonList reasons={refusals} />
            </Alert>
          )}
          <Group justify="flex-end">
            <Button variant="default" onClick={onClose}>
              {t('cancel')}
            </Button>
            <Button type="submit" color={isGrave ? 'red' : 'blue'} loading={isPending}>
              {confirm}
            </Button>
          </Group>
        </Stack>
      </form>
    </Modal>
  );
}
