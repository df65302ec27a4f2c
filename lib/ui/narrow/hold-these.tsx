'use client';

import { Anchor, Button, NativeSelect, Textarea } from '@mantine/core';
import { IconHandStop } from '@tabler/icons-react';
import Link from 'next/link';
import { type FormEvent, useState } from 'react';
import { useTranslations } from 'use-intl';
import type { Refusal } from '@/lib/domain/gate/refusals';
import type { Condition } from '@/lib/domain/genealogy/narrow-question';
import {
  HOLDS_AT_ONCE_MAX,
  HOLDS_MAX,
  type HoldBatch,
  type HoldPlan,
  type HoldWish,
} from '@/lib/domain/holds/hold-plan';
import classes from '@/lib/ui/narrow/narrow.module.css';
import { ReasonList } from '@/lib/ui/verdict/reason-list';

type Refused = { unit: string; refusals: Refusal[] };

/** The two steps of holding: a plan with ids, then its parts, each of which may be sent again. */
export type HoldSteps = {
  plan: (wish: HoldWish) => Promise<HoldPlan>;
  record: (batch: HoldBatch) => Promise<Refused[]>;
};

type Progress = {
  plan: HoldPlan;
  reason: string;
  done: number;
  refused: Refused[];
  state: 'going' | 'lost' | 'done';
};

/** Puts the units of an answer on hold, one hold a unit, some at a time, with what is done in sight. */
export function HoldThese({
  conditions,
  counts,
  isComplete,
  steps,
}: {
  conditions: readonly Condition[];
  counts: { certain: number; possible: number };
  isComplete: boolean;
  steps: HoldSteps;
}) {
  const t = useTranslations('narrow.hold');
  const [isPlanning, setPlanning] = useState(false);
  const [isLost, setLost] = useState(false);
  const [progress, setProgress] = useState<Progress | null>(null);

  const run = async (from: Progress): Promise<void> => {
    let now: Progress = { ...from, state: 'going' };
    setProgress(now);
    while (now.done < now.plan.holds.length) {
      const holds = now.plan.holds.slice(now.done, now.done + HOLDS_AT_ONCE_MAX);
      const refused = await steps.record({ at: now.plan.at, reason: now.reason, holds }).catch(() => null);
      if (refused === null) return setProgress({ ...now, state: 'lost' });
      now = { ...now, done: now.done + holds.length, refused: [...now.refused, ...refused] };
      setProgress(now);
    }
    setProgress({ ...now, state: 'done' });
  };

  const submit = async (event: FormEvent<HTMLFormElement>): Promise<void> => {
    event.preventDefault();
    const form = new FormData(event.currentTarget);
    const reason = String(form.get('reason') ?? '').trim();
    const group = form.get('group') === 'both' ? 'both' : 'certain';
    setPlanning(true);
    setLost(false);
    const plan = await steps.plan({ conditions: [...conditions], group, reason }).catch(() => null);
    setPlanning(false);
    setLost(plan === null);
    if (plan !== null) await run({ plan, reason, done: 0, refused: [], state: 'going' });
  };

  const isBusy = isPlanning || progress?.state === 'going';
  return (
    <form className={`${classes.hold} rk-no-print`} onSubmit={submit}>
      <p className={classes.quiet}>{t('text', { max: HOLDS_MAX })}</p>
      {!isComplete && <p>{t('incomplete')}</p>}
      <NativeSelect
        name="group"
        label={t('which')}
        defaultValue="both"
        data={[
          { value: 'both', label: t('both', { count: counts.certain + counts.possible }) },
          { value: 'certain', label: t('certain', { count: counts.certain }) },
        ]}
      />
      <Textarea
        name="reason"
        label={t('reason')}
        required
        withAsterisk={false}
        maxLength={2000}
        autosize
        minRows={2}
      />
      <div>
        <Button type="submit" loading={isBusy} leftSection={<IconHandStop aria-hidden />}>
          {t('submit')}
        </Button>
      </div>
      {isLost && <p role="alert">{t('failed')}</p>}
      {progress !== null && <Report progress={progress} onContinue={() => run(progress)} />}
    </form>
  );
}

function Report({ progress, onContinue }: { progress: Progress; onContinue: () => void }) {
  const t = useTranslations('narrow.hold');
  const { plan, done, refused, state } = progress;
  const count = plan.holds.length;
  return (
    <>
      {count > 0 && <progress max={count} value={done} aria-label={t('going', { done, count })} />}
      <p role="status">
        {state === 'done' ? t('done', { count: done - refused.length }) : t('going', { done, count })}
      </p>
      {state === 'done' && plan.rest > 0 && <p>{t('rest', { count: plan.rest })}</p>}
      {state === 'lost' && (
        <div role="alert">
          <p>{t('failed')}</p>
          <Button onClick={onContinue}>{t('continue')}</Button>
        </div>
      )}
      {refused.length > 0 && (
        <div role="alert">
          <p>{t('refused', { count: refused.length })}</p>
          {refused.map(({ unit, refusals }) => (
            <div key={unit}>
              <strong>{unit}</strong>
              <ReasonList reasons={refusals} />
            </div>
          ))}
        </div>
      )}
      {state === 'done' && (
        <Anchor component={Link} href="/holds">
          {t('see')}
        </Anchor>
      )}
    </>
  );
}
