'use client';

import { Textarea } from '@mantine/core';
import { IconSignature } from '@tabler/icons-react';
import { useState } from 'react';
import { useTranslations } from 'use-intl';
import type { UnitPicture } from '@/lib/domain/station/scan-picture';
import { BigButton } from '@/lib/ui/shop/big-button';
import classes from '@/lib/ui/shop/shop.module.css';
import { UnitCautions } from '@/lib/ui/shop/unit-cautions';
import { useCautionWords } from '@/lib/ui/shop/use-caution-words';
import type { TaskAt } from '@/lib/ui/station/panel-task';
import { ProvisionalStrip } from '@/lib/ui/station/provisional-strip';
import type { PanelProps } from '@/lib/ui/station/task-panel';
import { VerdictPanel } from '@/lib/ui/verdict/verdict-panel';

/** Sign-off: a person of QA answers for the unit, with what the signature says. */
export function SignPanel({ task, person, press }: PanelProps & { task: TaskAt<'signing'> }) {
  const t = useTranslations('station');
  const { unit, about, isSent } = task;
  const next = about.unit?.next ?? null;
  const standard = next === null ? t('sign.standard') : t('sign.board', { ...next, step: String(next.step) });
  const [meaning, setMeaning] = useState(standard);
  const product = [about.unit?.product, about.unit?.revision].filter(Boolean).join(' ');
  return (
    <div className={classes.stack}>
      <VerdictPanel
        kind={next === null ? 'go' : 'caution'}
        text={
          <>
            {next === null
              ? t('sign.ready', { unit, product })
              : t('sign.unfinished', {
                  unit,
                  product,
                  operation: next.operation,
                  step: String(next.step),
                })}
            {about.unit?.isSigned && (
              <>
                <br />
                {t('signedAlready')}
              </>
            )}
          </>
        }
      />
      {about.provisional && <ProvisionalStrip provisional={about.provisional} />}
      <UnitCautions unit={unit} cautions={about.unit?.cautions ?? []} />
      <section className={classes.card} data-meaning="act" aria-label={t('sign.title', { unit })}>
        {about.unit !== null && <Covered unit={about.unit} />}
        <Textarea
          size="xl"
          label={t('sign.meaning')}
          value={meaning}
          maxLength={2000}
          autosize
          minRows={1}
          onChange={(event) => setMeaning(event.currentTarget.value)}
        />
        <BigButton
          look="act"
          size="huge"
          shape={IconSignature}
          isDisabled={isSent || meaning.trim() === ''}
          onPress={() => press({ button: 'sign', meaning: meaning.trim() })}
        >
          {isSent ? t('sign.sending') : t('sign.record', { badge: person.badge })}
        </BigButton>
        <div className={classes.row}>
          <BigButton look="quiet" hint="Esc" isDisabled={isSent} onPress={() => press({ button: 'leave' })}>
            {t('leave')}
          </BigButton>
        </div>
      </section>
    </div>
  );
}

/** Which steps the signature covers, and which it does not; nor does it cover what the unit lacks. */
function Covered({ unit: { unit, steps, cautions } }: { unit: UnitPicture }) {
  const t = useTranslations('station.sign');
  const lacks = cautions.filter(({ what }) => what !== 'held_inside').map(useCautionWords(unit));
  const wordsOf = (isPassed: boolean): string =>
    steps
      .filter(({ last }) => (last === 'pass') === isPassed)
      .map(({ step, operation }) => t('step', { operation, step: String(step) }))
      .join(', ');
  const owed = [wordsOf(false), ...lacks].filter((words) => words !== '');
  return (
    <dl className={classes.stack}>
      <div>
        <dt className={classes.quiet}>{t('signs')}</dt>
        <dd className={classes.line}>{wordsOf(true) || t('signsNothing')}</dd>
      </div>
      <div>
        <dt className={classes.quiet}>{t('owes')}</dt>
        {(owed.length === 0 ? [t('owesNothing')] : owed).map((words) => (
          <dd key={words} className={classes.line}>
            {words}
          </dd>
        ))}
      </div>
    </dl>
  );
}
