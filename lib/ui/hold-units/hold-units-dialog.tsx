'use client';

import { Alert, Button, Group, Modal, NativeSelect, Progress, Stack, Text, Textarea } from '@mantine/core';
import { IconAlertTriangleFilled, IconCircleCheckFilled } from '@tabler/icons-react';
import Link from 'next/link';
import { type FormEvent, useState } from 'react';
import { useTranslations } from 'use-intl';
import { HOLD_BATCH_MAX } from '@/lib/domain/holds/hold-batch';
import type { HoldableAnswer } from '@/lib/ui/hold-units/hold-units-button';
import {
  type HoldActions,
  type HoldBatch,
  type HoldGroup,
  useHoldBatch,
} from '@/lib/ui/hold-units/use-hold-batch';
import { ReasonList } from '@/lib/ui/verdict/reason-list';

const REFUSED_SHOWN = 10;

/** Asks which units and why, holds them with what is done in sight, and tells what became of them. */
export function HoldUnitsDialog({
  answer,
  actions,
  onClose,
}: {
  answer: HoldableAnswer;
  actions: HoldActions;
  onClose: () => void;
}) {
  const t = useTranslations('trace.hold');
  const tDesk = useTranslations('desk');
  // The page behind is read again once the units are held; the dialog goes on with the answer it was opened for.
  const [{ counts, isComplete, readPage }] = useState(answer);
  const { state, start } = useHoldBatch(actions, readPage);
  const groups = groupsOf(counts);
  const [group, setGroup] = useState<HoldGroup>(groups[0]?.group ?? 'both');
  const count = groups.find((each) => each.group === group)?.count ?? 0;
  const isBusy = state.step === 'reading' || state.step === 'holding';
  const isFixed = isBusy || state.batch !== null;
  const onSubmit = (event: FormEvent<HTMLFormElement>): void => {
    event.preventDefault();
    const reason = new FormData(event.currentTarget).get('reason');
    // A disabled box gives nothing: going on, the batch has its reason.
    const text = typeof reason === 'string' ? reason.trim() : '';
    if (state.batch !== null || text !== '') void start({ group, reason: text });
  };
  return (
    <Modal
      opened
      onClose={isBusy ? () => undefined : onClose}
      title={t('title', { count: Math.min(state.batch?.units.length ?? count, HOLD_BATCH_MAX) })}
      closeButtonProps={{ 'aria-label': tDesk('close'), size: 48 }}
      size="lg"
    >
      <form onSubmit={onSubmit}>
        <Stack>
          {state.step !== 'done' && (
            <>
              <Text>{t('text')}</Text>
              {!isComplete && (
                <Alert color="yellow" icon={<IconAlertTriangleFilled aria-hidden />}>
                  {t('incomplete')}
                </Alert>
              )}
              {groups.length > 1 && (
                <NativeSelect
                  label={t('which')}
                  value={group}
                  disabled={isFixed}
                  onChange={(event) =>
                    setGroup(groups.find((each) => each.group === event.currentTarget.value)?.group ?? 'both')
                  }
                  data={groups.map((each) => ({
                    value: each.group,
                    label: t(`group.${each.group}`, { count: each.count }),
                  }))}
                />
              )}
              {count > HOLD_BATCH_MAX && (
                <Alert color="yellow">{t('bounded', { max: HOLD_BATCH_MAX, count })}</Alert>
              )}
              <Textarea
                name="reason"
                label={tDesk('reason')}
                required
                withAsterisk={false}
                maxLength={2000}
                autosize
                minRows={2}
                data-autofocus
                disabled={isFixed}
              />
            </>
          )}
          <div role="status">
            {state.step === 'reading' && <Text>{t('reading')}</Text>}
            {state.step === 'unread' && <Text>{t('unread')}</Text>}
            {(state.step === 'holding' || state.step === 'failed') && (
              <Going batch={state.batch} isFailed={state.step === 'failed'} />
            )}
            {state.step === 'done' && <Done batch={state.batch} />}
          </div>
          <Group justify="flex-end">
            {state.step === 'done' && (
              <Button component={Link} href="/holds" prefetch={false} variant="default">
                {t('see')}
              </Button>
            )}
            <Button variant="default" disabled={isBusy} onClick={onClose}>
              {state.step === 'done' ? tDesk('close') : tDesk('cancel')}
            </Button>
            {state.step !== 'done' && (
              <Button type="submit" loading={isBusy}>
                {state.step === 'failed' ? t('again') : t('confirm')}
              </Button>
            )}
          </Group>
        </Stack>
      </form>
    </Modal>
  );
}

/** What may be chosen, the safest first: whatever may be concerned. */
function groupsOf({ certain, possible }: HoldableAnswer['counts']): { group: HoldGroup; count: number }[] {
  if (possible === 0) return [{ group: 'certain', count: certain }];
  if (certain === 0) return [{ group: 'possible', count: possible }];
  return [
    { group: 'both', count: certain + possible },
    { group: 'certain', count: certain },
    { group: 'possible', count: possible },
  ];
}

function Going({ batch: { done, units }, isFailed }: { batch: HoldBatch; isFailed: boolean }) {
  const t = useTranslations('trace.hold');
  const count = units.length;
  return (
    <>
      <Progress value={(100 * done) / Math.max(1, count)} size="xl" aria-label={t('progress')} />
      <Text>{t(isFailed ? 'failed' : 'holding', { done, count })}</Text>
    </>
  );
}

function Done({ batch: { done, already, refused } }: { batch: HoldBatch }) {
  const t = useTranslations('trace.hold');
  const rest = refused.length - REFUSED_SHOWN;
  return (
    <Stack gap="xs">
      <Group gap="xs" wrap="nowrap" align="start">
        <IconCircleCheckFilled aria-hidden style={{ flex: 'none', color: 'var(--rk-go)' }} />
        <Text fw={700}>{t('done', { held: done - already - refused.length })}</Text>
      </Group>
      {already > 0 && <Text>{t('already', { count: already })}</Text>}
      {refused.length > 0 && <Text fw={700}>{t('refused', { count: refused.length })}</Text>}
      {refused.slice(0, REFUSED_SHOWN).map(({ unit, refusals }) => (
        <div key={unit}>
          <strong>{unit}</strong>
          <ReasonList reasons={refusals} />
        </div>
      ))}
      {rest > 0 && <Text>{t('refusedMore', { count: rest })}</Text>}
    </Stack>
  );
}
