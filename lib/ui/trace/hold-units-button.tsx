'use client';

import { Alert, Button, Group, Modal, Progress, Stack, Text, Textarea } from '@mantine/core';
import { IconHandStop } from '@tabler/icons-react';
import { type FormEvent, useState } from 'react';
import { useTranslations } from 'use-intl';
import { whereUsedAnswerSchema } from '@/lib/domain/genealogy/answer';
import { HOLD_BATCH_MAX } from '@/lib/domain/holds/hold-batch';

/** The server's part: a batch, its units some at a time, and its end. */
export type HoldActions = {
  begin: () => Promise<string>;
  hold: (request: {
    batch: string;
    units: string[];
    reason: string;
  }) => Promise<{ ok: true; refused: { unit: string }[] } | { ok: false }>;
  end: () => Promise<void>;
};

type State =
  | { step: 'asking' }
  | { step: 'holding'; done: number; count: number }
  | { step: 'failed'; done: number; count: number }
  | { step: 'done'; held: number; refused: string[] };

/** What is left to do of a batch, so that a second try goes on where the first one stopped. */
type Batch = { id: string; reason: string; units: string[]; done: number; refused: string[] };

const CALL_COUNT = 100;
const PAGE_COUNT = 500;

/** Holds the units of an answer, one hold each; `query` is the question as the API takes it. */
export function HoldUnitsButton({
  query,
  count,
  actions,
}: {
  query: string;
  count: number;
  actions: HoldActions;
}) {
  const t = useTranslations('trace.hold');
  const [isOpen, setOpen] = useState(false);
  if (count === 0) return null;
  return (
    <>
      <Button variant="default" leftSection={<IconHandStop aria-hidden />} onClick={() => setOpen(true)}>
        {t('label', { count: Math.min(count, HOLD_BATCH_MAX) })}
      </Button>
      {isOpen && <HoldDialog query={query} count={count} actions={actions} onClose={() => setOpen(false)} />}
    </>
  );
}

function HoldDialog({
  query,
  count,
  actions,
  onClose,
}: {
  query: string;
  count: number;
  actions: HoldActions;
  onClose: () => void;
}) {
  const t = useTranslations('trace.hold');
  const tDesk = useTranslations('desk');
  const [state, setState] = useState<State>({ step: 'asking' });
  const [batch, setBatch] = useState<Batch | null>(null);

  const holdAll = async (all: Batch): Promise<void> => {
    let now = all;
    while (now.done < now.units.length) {
      const units = now.units.slice(now.done, now.done + CALL_COUNT);
      setState({ step: 'holding', done: now.done, count: now.units.length });
      const answer = await actions.hold({ batch: now.id, units, reason: now.reason }).catch(() => null);
      if (answer?.ok !== true) {
        setState({ step: 'failed', done: now.done, count: now.units.length });
        return;
      }
      const refused = [...now.refused, ...answer.refused.map(({ unit }) => unit)];
      now = { ...now, done: now.done + units.length, refused };
      setBatch(now);
    }
    setState({ step: 'done', held: now.units.length - now.refused.length, refused: now.refused });
    await actions.end().catch(() => undefined);
  };
  const start = async (reason: string): Promise<void> => {
    if (batch !== null) return holdAll(batch);
    setState({ step: 'holding', done: 0, count: Math.min(count, HOLD_BATCH_MAX) });
    try {
      const fresh = { id: await actions.begin(), reason, units: await unitsOf(query), done: 0, refused: [] };
      setBatch(fresh);
      await holdAll(fresh);
    } catch {
      setState({ step: 'failed', done: 0, count: Math.min(count, HOLD_BATCH_MAX) });
    }
  };
  const onSubmit = (event: FormEvent<HTMLFormElement>): void => {
    event.preventDefault();
    const reason = new FormData(event.currentTarget).get('reason');
    if (typeof reason === 'string' && reason.trim() !== '') void start(reason.trim());
  };
  const isBusy = state.step === 'holding';
  return (
    <Modal
      opened
      onClose={isBusy ? () => undefined : onClose}
      title={t('title', { count: Math.min(count, HOLD_BATCH_MAX) })}
      closeButtonProps={{ 'aria-label': tDesk('close'), size: 48 }}
      size="lg"
    >
      <form onSubmit={onSubmit}>
        <Stack>
          <Text>{t('text')}</Text>
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
            disabled={batch !== null || isBusy}
          />
          <div role="status">
            {(state.step === 'holding' || state.step === 'failed') && (
              <>
                <Progress value={(100 * state.done) / Math.max(1, state.count)} aria-label={t('progress')} />
                <Text>{t(state.step, { done: state.done, count: state.count })}</Text>
              </>
            )}
            {state.step === 'done' && <Text fw={700}>{t('done', { held: state.held })}</Text>}
            {state.step === 'done' && state.refused.length > 0 && (
              <Text>{t('refused', { units: state.refused.join(', ') })}</Text>
            )}
          </div>
          <Group justify="flex-end">
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

/** The units of the answer, by its pages, at most a batch of them. */
async function unitsOf(query: string): Promise<string[]> {
  const units: string[] = [];
  for (let cursor: string | null = ''; cursor !== null && units.length < HOLD_BATCH_MAX; ) {
    const parameters = new URLSearchParams(query);
    parameters.set('limit', String(PAGE_COUNT));
    if (cursor !== '') parameters.set('cursor', cursor);
    const response = await fetch(`/api/trace/where-used?${parameters}`);
    if (!response.ok) throw new Error(`The units were answered with ${response.status}.`);
    const page = whereUsedAnswerSchema.parse(await response.json());
    units.push(...page.units.map(({ unit }) => unit));
    cursor = page.next;
  }
  return units.slice(0, HOLD_BATCH_MAX);
}
