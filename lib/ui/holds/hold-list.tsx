'use client';

import { useEffect, useState } from 'react';
import { useTranslations } from 'use-intl';
import { HOLD_TARGET_KINDS, type HoldTargetKind } from '@/lib/domain/events/vocabulary';
import type { OpenHoldEntry, OpenHoldList } from '@/lib/domain/holds/open-hold-list';
import { CodeText } from '@/lib/ui/code-text';
import { Moment } from '@/lib/ui/moment';
import { BigButton } from '@/lib/ui/shop/big-button';
import classes from '@/lib/ui/shop/shop.module.css';
import { HoldTag } from '@/lib/ui/tags/hold-tag';
import { useDuration } from '@/lib/ui/use-duration';
import { useHoldReason } from '@/lib/ui/verdict/use-hold-reason';
import { useRefusalWords } from '@/lib/ui/verdict/use-refusal-words';

const AGES_EVERY_MS = 30_000;

/** Open holds, oldest first: on what, why, since when and by whom. */
export function HoldList({
  list,
  onRelease,
}: {
  list: OpenHoldList;
  /** Null for those who may not release. */
  onRelease: ((hold: OpenHoldEntry) => void) | null;
}) {
  const t = useTranslations('holds');
  const nowMs = useNow();
  const [kind, setKind] = useState<HoldTargetKind | null>(null);
  const { holds, total } = list;
  const kinds = HOLD_TARGET_KINDS.filter((each) => holds.some((hold) => hold.kind === each));
  const shown = kind === null ? holds : holds.filter((hold) => hold.kind === kind);
  return (
    <section className={classes.stack} aria-label={t('title')}>
      <h2 className={classes.heading}>{t('count', { count: total })}</h2>
      {total === 0 && <p className={classes.quiet}>{t('none')}</p>}
      {total > holds.length && <p className={classes.quiet}>{t('shown', { count: holds.length })}</p>}
      {kinds.length > 1 && (
        <fieldset className={classes.plainFieldset} aria-label={t('filter')}>
          <div className={classes.row}>
            <BigButton isPressed={kind === null} onPress={() => setKind(null)}>
              {t('all')}
            </BigButton>
            {kinds.map((each) => (
              <BigButton key={each} isPressed={kind === each} onPress={() => setKind(each)}>
                {t(`form.target.${each}`)}
              </BigButton>
            ))}
          </div>
        </fieldset>
      )}
      {shown.length > 0 && (
        <ul className={classes.cards}>
          {shown.map((hold) => (
            <li key={hold.hold}>
              <HoldCard hold={hold} nowMs={nowMs} onRelease={onRelease} />
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}

function HoldCard({
  hold,
  nowMs,
  onRelease,
}: {
  hold: OpenHoldEntry;
  nowMs: number;
  onRelease: ((hold: OpenHoldEntry) => void) | null;
}) {
  const t = useTranslations('holds');
  const reasonOf = useHoldReason();
  const durationOf = useDuration();
  const { kind, id, reason, automatic, at, because, placedBy } = hold;
  const wordsOf = useRefusalWords();
  return (
    <article className={classes.card}>
      <div className={classes.spread}>
        <span>
          {t(`form.target.${kind}`)}{' '}
          <strong>
            <CodeText code={id} kind={kind} />
          </strong>
        </span>
        <span className={classes.tags}>
          <HoldTag isOpen />
        </span>
      </div>
      <p>
        <strong>{reasonOf(reason)}</strong>
      </p>
      {because.map((refusal) => (
        <p key={JSON.stringify(refusal)}>{wordsOf(refusal).text}</p>
      ))}
      <p className={classes.quiet}>
        <Moment at={at} /> · {t('age', { age: durationOf(nowMs - Date.parse(at)) })}
        {automatic
          ? ` · ${placedBy === null ? t('automatic') : t('automaticWhen', { badge: placedBy })}`
          : placedBy !== null && ` · ${t('placedBy', { badge: placedBy })}`}
      </p>
      {onRelease !== null && (
        <div className={classes.row}>
          <BigButton label={t('releaseOf', { target: id })} onPress={() => onRelease(hold)}>
            {t('release')}
          </BigButton>
        </div>
      )}
    </article>
  );
}

/** Now in milliseconds, moving on now and then. */
function useNow(): number {
  const [nowMs, setNowMs] = useState(() => Date.now());
  useEffect(() => {
    const timer = setInterval(() => setNowMs(Date.now()), AGES_EVERY_MS);
    return () => clearInterval(timer);
  }, []);
  return nowMs;
}
