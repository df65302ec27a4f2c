import { IconScaleOutline } from '@tabler/icons-react';
import Link from 'next/link';
import { useTimeZone, useTranslations } from 'use-intl';
import type { DisagreeingCount, MissedChange } from '@/lib/domain/balance/count-check';
import { CodeText } from '@/lib/ui/code-text';
import classes from '@/lib/ui/counts/counts.module.css';
import { RemainderChart } from '@/lib/ui/counts/remainder-chart';
import { Facts } from '@/lib/ui/facts';
import { formatMoment } from '@/lib/ui/format-moment';
import { Moment } from '@/lib/ui/moment';
import { traceAddress } from '@/lib/ui/trace/trace-address';
import { TraceLink } from '@/lib/ui/trace/trace-link';

/** One reel that disagrees: what must be left, what was counted, and the intervals that explain the difference. */
export function CountCard({ count }: { count: DisagreeingCount }) {
  const t = useTranslations('counts');
  const { item, part, verdict, pieces, missed } = count;
  return (
    <article className={classes.card} aria-label={item}>
      <div className={classes.head}>
        <h2>
          <CodeText code={item} kind="item" />
        </h2>
        <p className={classes.verdict}>
          <IconScaleOutline aria-hidden />
          <strong>{t(verdict === 'surplus' ? 'surplusPieces' : 'deficitPieces', { pieces })}</strong>
          <span>{t(verdict)}</span>
        </p>
      </div>
      <div className={classes.body}>
        <div>
          <CountFacts count={count} />
          <h3>{t('missed.title')}</h3>
          {missed.length === 0 && <p>{t('missed.none')}</p>}
          <ul className={classes.missed}>
            {missed.map((each) => (
              <li key={JSON.stringify(each)}>
                <Missed missed={each} part={part} />
              </li>
            ))}
          </ul>
        </div>
        <RemainderChart count={count} />
      </div>
    </article>
  );
}

function CountFacts({ count }: { count: DisagreeingCount }) {
  const t = useTranslations('counts');
  const timeZone = useTimeZone() ?? 'UTC';
  const { part, from, to, expected, used, attrition } = count;
  const timeOf = (at: string) => formatMoment(Date.parse(at), { timeZone, precision: 'minute' });
  const isOne = Math.floor(expected.min) === Math.floor(expected.max);
  return (
    <Facts
      facts={[
        [t('part'), part !== null && <TraceLink about="part" code={part} />],
        [t('before'), t('foundAt', { left: from.left, time: timeOf(from.at) })],
        [t('expected'), isOne ? t('expectedOne', { min: expected.min }) : t('expectedRange', expected)],
        [t('found'), to === null ? t('foundNone') : t('foundAt', { left: to.left, time: timeOf(to.at) })],
        [t('allowed'), t('allowedText', { share: attrition, used: used.max, pieces: attrition * used.max })],
      ]}
    />
  );
}

function Missed({ missed, part }: { missed: MissedChange; part: string | null }) {
  const t = useTranslations('counts.missed');
  const { story, station, slot, recorded, other, from, to, units } = missed;
  const words =
    story === 'unknown'
      ? t('unknown')
      : t.rich(story, {
          other: () => <CodeText code={other ?? ''} kind="item" />,
          recorded: () => <CodeText code={recorded} kind="item" />,
        });
  const question = { station, from, to, ...(part === null ? {} : { part }) };
  return (
    <>
      <p>{words}</p>
      <p>
        {t('where', { station, slot })} · <Moment at={from} precision="second" /> –{' '}
        <Moment at={to} precision="second" /> · <strong>{t('units', { count: units })}</strong>
      </p>
      <p className={classes.links}>
        <Link href={traceAddress(question)} prefetch={false}>
          {t('show')}
        </Link>
        {[recorded, ...(other === null ? [] : [other])].map((item) => (
          <Link key={item} href={traceAddress({ item, certainty: ['possible'] })} prefetch={false}>
            {t('used', { item })}
          </Link>
        ))}
      </p>
    </>
  );
}
