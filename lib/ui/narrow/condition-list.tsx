'use client';

import { IconCircleCheckFilled, IconCircleOff, IconHelpHexagon } from '@tabler/icons-react';
import Link from 'next/link';
import { useTranslations } from 'use-intl';
import type { ConditionAnswer } from '@/lib/domain/genealogy/narrow-answer';
import type { Condition } from '@/lib/domain/genealogy/narrow-question';
import classes from '@/lib/ui/narrow/narrow.module.css';
import { narrowAddress } from '@/lib/ui/narrow/narrow-address';
import { useConditionWords } from '@/lib/ui/narrow/use-condition-words';
import { Tag } from '@/lib/ui/tags/tag';

/** The conditions in their sequence, each with what it does to the set: keeps, leaves in doubt, rules out. */
export function ConditionList({ rows }: { rows: readonly ConditionAnswer[] }) {
  const conditions = rows.map(({ condition }) => condition);
  return (
    <ol className={classes.conditions}>
      {rows.map((row, index) => (
        <li key={JSON.stringify(row.condition)}>
          <ConditionRow row={row} index={index} conditions={conditions} />
        </li>
      ))}
    </ol>
  );
}

function ConditionRow({
  row,
  index,
  conditions,
}: {
  row: ConditionAnswer;
  index: number;
  conditions: readonly Condition[];
}) {
  const t = useTranslations('narrow');
  const wordsOf = useConditionWords();
  const { condition, own, after, removed, spared } = row;
  const words = wordsOf(condition);
  const demand = condition.must ? 'must' : 'mustNot';
  return (
    <>
      <p className={classes.says}>
        <Tag
          meaning={condition.must ? 'neutral' : 'strong'}
          shape={condition.must ? IconCircleCheckFilled : IconCircleOff}
        >
          {t(`demand.${demand}`)}
        </Tag>{' '}
        <strong>{words}</strong>
      </p>
      <div className={classes.does}>
        {after === null ? (
          <p className={classes.quiet}>{t('before')}</p>
        ) : (
          <>
            <Bar certain={after.certain} possible={after.possible} removed={removed ?? 0} />
            <p>{t('after', after)}</p>
          </>
        )}
        <p className={classes.facts}>
          {removed !== null && <span>{t('removed', { count: removed })}</span>}
          {spared > 0 ? (
            <span className={classes.spared}>
              <IconHelpHexagon aria-hidden /> {t('spared', { count: spared })}
            </span>
          ) : (
            <span>{t('sparedNone')}</span>
          )}
          <span className={classes.quiet}>{t('ownOf', { counts: t('own', own) })}</span>
        </p>
      </div>
      <Change conditions={conditions} index={index} words={words} />
    </>
  );
}

/** Turning round and removing are links to other questions, so that Back undoes them. */
function Change({
  conditions,
  index,
  words,
}: {
  conditions: readonly Condition[];
  index: number;
  words: string;
}) {
  const t = useTranslations('narrow');
  const others = conditions.filter((_, at) => at !== index);
  const condition = conditions[index];
  const isOnlyMust = condition?.must === true && !others.some(({ must }) => must);
  const turned = conditions.map((each, at) => (at === index ? { ...each, must: !each.must } : each));
  const action = t(`turn.${condition?.must === true ? 'mustNot' : 'must'}`);
  if (isOnlyMust && others.length > 0)
    return <p className={`${classes.change} ${classes.quiet} rk-no-print`}>{t('lastMust')}</p>;
  return (
    <p className={`${classes.change} rk-no-print`}>
      {!isOnlyMust && (
        <Link
          href={narrowAddress(turned)}
          prefetch={false}
          scroll={false}
          aria-label={t('turnOf', { action, condition: words })}
        >
          {action}
        </Link>
      )}
      <Link
        href={narrowAddress(others)}
        prefetch={false}
        scroll={false}
        aria-label={t('removeOf', { condition: words })}
      >
        {t('remove')}
      </Link>
    </p>
  );
}

function Bar({ certain, possible, removed }: { certain: number; possible: number; removed: number }) {
  const t = useTranslations('narrow');
  return (
    <div className={classes.bar} role="img" aria-label={t('bar', { certain, possible, removed })}>
      {Object.entries({ certain, possible, removed }).map(
        ([part, count]) => count > 0 && <i key={part} data-part={part} style={{ flexGrow: count }} />,
      )}
    </div>
  );
}
