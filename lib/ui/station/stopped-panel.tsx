'use client';

import { IconReplace, IconSignature, IconTool } from '@tabler/icons-react';
import { useTranslations } from 'use-intl';
import { may } from '@/lib/domain/people/permissions';
import { BigButton } from '@/lib/ui/shop/big-button';
import classes from '@/lib/ui/shop/shop.module.css';
import { useLabelWords } from '@/lib/ui/shop/use-label-words';
import type { TaskAt } from '@/lib/ui/station/panel-task';
import { ProvisionalStrip } from '@/lib/ui/station/provisional-strip';
import type { PanelProps } from '@/lib/ui/station/task-panel';
import { useTodo } from '@/lib/ui/station/use-todo';
import { VerdictPanel } from '@/lib/ui/verdict/verdict-panel';

/** No-go: why, and what to do about it. The next scan takes it away. */
export function StoppedPanel({ task, picture, person, press }: PanelProps & { task: TaskAt<'stopped'> }) {
  const t = useTranslations('station');
  const todoOf = useTodo();
  const wordsOf = useLabelWords();
  const { unit, reasons, about } = task;
  const codes = reasons.map((reason) => reason.code);
  const needsRepair = about.unit !== null && (about.unit.failure !== null || about.unit.open.length > 0);
  const canRepair = needsRepair && !codes.includes('scrapped') && may(person, 'event:part.removed');
  const isFinal = codes.includes('scrapped') || codes.includes('unknown_unit');
  const isHeld = codes.includes('on_hold');
  const label = about.unit === null ? (about.scan?.label ?? null) : null;
  const isSlotFault = codes.some((code) => code === 'slot_empty' || code === 'wrong_part');
  const canSign = !picture.isOnRoute && about.unit?.signing.length === 0 && may(person, 'event:unit.signed');
  if (label !== null)
    return (
      <div className={classes.stack}>
        <VerdictPanel kind="caution" text={wordsOf(label)} />
        <p className={classes.quiet}>{t('again')}</p>
      </div>
    );
  return (
    <div className={classes.stack}>
      <VerdictPanel kind="stop" text={t('stopped', { unit })} reasons={reasons}>
        <OtherThing task={task} />
        <p className={classes.todo}>{todoOf(reasons)}</p>
      </VerdictPanel>
      {about.provisional && <ProvisionalStrip provisional={about.provisional} isStopped />}
      <div className={classes.row}>
        {canRepair && (
          <BigButton
            look={isHeld ? 'plain' : 'act'}
            shape={IconTool}
            onPress={() => press({ button: 'repair' })}
          >
            {t('repair.open')}
          </BigButton>
        )}
        {canSign && (
          <BigButton shape={IconSignature} onPress={() => press({ button: 'signing' })}>
            {t('sign.open')}
          </BigButton>
        )}
        {isSlotFault && may(person, 'screen:changeover') && (
          <a
            className={classes.button}
            data-look="act"
            href={`/changeover?station=${encodeURIComponent(picture.station.code)}`}
          >
            <IconReplace aria-hidden />
            {t('toChangeover')}
          </a>
        )}
        <BigButton onPress={() => press({ button: 'acknowledge' })}>{t('understood')}</BigButton>
      </div>
      <p className={classes.quiet}>
        {about.unit !== null &&
          !isFinal &&
          (about.unit.next === null
            ? t('nextDone')
            : t('next', { operation: about.unit.next.operation, step: String(about.unit.next.step) }))}{' '}
        {t('again')}
      </p>
    </div>
  );
}

/** What the code is instead, when it is no unit. */
function OtherThing({ task: { unit, about } }: { task: TaskAt<'stopped'> }) {
  const t = useTranslations();
  const { scan } = about;
  if (about.unit !== null || scan === null) return null;
  if (scan.item !== null) {
    const kind = t(`tags.itemKind.${scan.item.kind}`);
    return (
      <p className={classes.line}>{t('station.isItem', { code: unit, kind, part: scan.item.part ?? '' })}</p>
    );
  }
  return scan.container === null ? null : (
    <p className={classes.line}>{t('station.isContainer', { code: unit })}</p>
  );
}
