'use client';

import { useState } from 'react';
import { useTranslations } from 'use-intl';
import type { BookedItem } from '@/lib/domain/items/receipt';
import type { PersonPrincipal } from '@/lib/domain/people/principal';
import type { LabelFacts } from '@/lib/domain/scanning/label-facts';
import { AboutItem } from '@/lib/ui/items/about-item';
import { CountForm } from '@/lib/ui/items/count-form';
import { InspectForm } from '@/lib/ui/items/inspect-form';
import type { ItemTask } from '@/lib/ui/items/item-task';
import { ReceiveForm } from '@/lib/ui/items/receive-form';
import { RetireForm } from '@/lib/ui/items/retire-form';
import { UnknownPart } from '@/lib/ui/items/unknown-part';
import { ScanBox } from '@/lib/ui/scan-box';
import { BigButton } from '@/lib/ui/shop/big-button';
import classes from '@/lib/ui/shop/shop.module.css';
import { giveSignal } from '@/lib/ui/shop/signals';
import { useFirstScan } from '@/lib/ui/shop/use-first-scan';
import { useLabelWords } from '@/lib/ui/shop/use-label-words';
import { type LookedUp, useLookedUp } from '@/lib/ui/shop/use-looked-up';
import { useScrollUp } from '@/lib/ui/shop/use-scroll-up';
import { VerdictPanel } from '@/lib/ui/verdict/verdict-panel';

/** One task at goods-in: scan an item, say what there is to say, and it is ready for the next one. */
export function ItemDesk({
  task,
  person,
  firstScan,
}: {
  task: ItemTask;
  person: PersonPrincipal;
  firstScan: string | null;
}) {
  const t = useTranslations('items');
  const { found, lookUp, clear } = useLookedUp();
  const [done, setDone] = useState<string | null>(null);
  const [booked, setBooked] = useState<BookedItem | null>(null);
  const [left, setLeft] = useState<string | null>(null);
  const [label, setLabel] = useState<LabelFacts | null>(null);
  const scan = async (code: string, facts: LabelFacts | null): Promise<void> => {
    setDone(null);
    setLabel(facts);
    const isOpen = found !== null && found.code !== code && found.scan !== null && !isStopped(task, found);
    setLeft(isOpen ? found.code : null);
    const picture = await lookUp(code);
    if (picture === null || isStopped(task, { code, scan: picture, isAsking: false })) giveSignal('stop');
    else giveSignal('done');
  };
  useScrollUp(done);
  useFirstScan(firstScan, (code) => void scan(code, null));
  const finish = (words: string): void => {
    setDone(words);
    setLeft(null);
    clear();
  };
  return (
    <>
      <ScanBox label={t(`scan.${task}`)} onScan={(code, facts) => void scan(code, facts)} />
      {left !== null && (
        <p className={classes.strip} data-meaning="caution" role="alert">
          {t('left', { item: left })}
        </p>
      )}
      {found === null && done !== null && <VerdictPanel kind="go" text={done} />}
      {found === null && done !== null && booked !== null && <UnknownPart part={booked.part} />}
      {found === null && done === null && <VerdictPanel kind="scan" text={t(`ready.${task}`)} />}
      {found !== null && <Found task={task} found={found} />}
      {found !== null && !found.isAsking && found.scan !== null && !isStopped(task, found) && (
        <div className={classes.columns}>
          <div className={classes.stack}>
            <TaskForm
              key={found.code}
              task={task}
              found={found}
              label={label}
              booked={booked}
              onBooked={setBooked}
              onDone={finish}
            />
            <div className={classes.row}>
              <BigButton onPress={clear}>{t('cancel')}</BigButton>
            </div>
          </div>
          {found.scan.item !== null && <AboutItem item={found.scan.item} person={person} />}
        </div>
      )}
    </>
  );
}

/** Whether the task cannot be done with what was scanned. */
function isStopped(task: ItemTask, { scan }: LookedUp): boolean {
  if (scan === null) return true;
  if (scan.item !== null) return false;
  return (
    task !== 'receive' || scan.unit !== null || scan.container !== null || scan.isPart || scan.label !== null
  );
}

function Found({ task, found }: { task: ItemTask; found: LookedUp }) {
  const t = useTranslations('items');
  const wordsOf = useLabelWords();
  const { code, scan, isAsking } = found;
  if (isAsking) return <VerdictPanel kind="busy" text={t('looking', { code })} />;
  if (scan === null) return <VerdictPanel kind="busy" text={t('unanswered', { code })} />;
  if (scan.item !== null)
    return task === 'receive' ? (
      <p className={classes.strip} data-meaning="caution" role="status">
        {t('known', { code })}
      </p>
    ) : null;
  if (scan.unit !== null) return <VerdictPanel kind="stop" text={t('isUnit', { code })} />;
  if (scan.container !== null) return <VerdictPanel kind="stop" text={t('isContainer', { code })} />;
  if (scan.isPart) return <VerdictPanel kind="stop" text={t('isPart', { code })} />;
  if (scan.label !== null) return <VerdictPanel kind="caution" text={wordsOf(scan.label)} />;
  return task === 'receive' ? null : (
    <VerdictPanel
      kind="stop"
      text={t('unknown', { code })}
      reasons={[{ code: 'unknown_item', item: code }]}
    />
  );
}

function TaskForm({
  task,
  found,
  label,
  booked,
  onBooked,
  onDone,
}: {
  task: ItemTask;
  found: LookedUp;
  label: LabelFacts | null;
  booked: BookedItem | null;
  onBooked: (booked: BookedItem) => void;
  onDone: (words: string) => void;
}) {
  const item = found.code;
  switch (task) {
    case 'receive':
      return (
        <ReceiveForm
          item={item}
          label={label}
          before={booked}
          onBooked={(now, words) => {
            onBooked(now);
            onDone(words);
          }}
        />
      );
    case 'count':
      return <CountForm item={item} knownQuantity={found.scan?.item?.quantity ?? null} onDone={onDone} />;
    case 'inspect':
      return <InspectForm item={item} onDone={onDone} />;
    case 'retire':
      return <RetireForm item={item} onDone={onDone} />;
    default:
      return task satisfies never;
  }
}
