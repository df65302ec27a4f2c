'use client';

import { type Icon, IconClipboardCheck, IconInbox, IconListNumbers, IconTrashX } from '@tabler/icons-react';
import { useState } from 'react';
import { useTranslations } from 'use-intl';
import type { EventType } from '@/lib/domain/events/catalogue';
import { may } from '@/lib/domain/people/permissions';
import type { PersonPrincipal } from '@/lib/domain/people/principal';
import { ItemDesk } from '@/lib/ui/items/item-desk';
import type { ItemTask } from '@/lib/ui/items/item-task';
import { BigButton } from '@/lib/ui/shop/big-button';
import { DeskFrame } from '@/lib/ui/shop/desk-frame';
import classes from '@/lib/ui/shop/shop.module.css';

const TASKS: readonly { task: ItemTask; event: EventType; shape: Icon }[] = [
  { task: 'receive', event: 'item.received', shape: IconInbox },
  { task: 'count', event: 'item.counted', shape: IconListNumbers },
  { task: 'inspect', event: 'item.inspected', shape: IconClipboardCheck },
  { task: 'retire', event: 'item.retired', shape: IconTrashX },
];

/** Goods-in: choose what is to be done, then scan item after item. */
export function ItemsApp(props: {
  person: PersonPrincipal;
  name: string | null;
  changePerson: () => Promise<void>;
  firstScan: string | null;
}) {
  const t = useTranslations('items');
  const { person } = props;
  const allowed = TASKS.filter(({ event }) => may(person, `event:${event}`));
  const [task, setTask] = useState<ItemTask>(allowed[0]?.task ?? 'inspect');
  return (
    <DeskFrame {...props} title={t('title')}>
      <fieldset className={classes.plainFieldset} aria-label={t('tasks')}>
        <div className={classes.row}>
          {allowed.map(({ task: each, shape }) => (
            <BigButton key={each} shape={shape} isPressed={each === task} onPress={() => setTask(each)}>
              {t(`task.${each}`)}
            </BigButton>
          ))}
        </div>
      </fieldset>
      <ItemDesk key={task} task={task} person={person} firstScan={props.firstScan} />
    </DeskFrame>
  );
}
