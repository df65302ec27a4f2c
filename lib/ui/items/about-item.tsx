'use client';

import { IconHandStop } from '@tabler/icons-react';
import { useTranslations } from 'use-intl';
import { may } from '@/lib/domain/people/permissions';
import type { PersonPrincipal } from '@/lib/domain/people/principal';
import type { ItemPicture } from '@/lib/domain/station/scan-picture';
import { CodeText } from '@/lib/ui/code-text';
import { Facts } from '@/lib/ui/facts';
import classes from '@/lib/ui/shop/shop.module.css';
import { ResultTag } from '@/lib/ui/tags/result-tag';
import { useHoldReason } from '@/lib/ui/verdict/use-hold-reason';

/** What the record knows of an item, and the way to hold it. */
export function AboutItem({ item, person }: { item: ItemPicture; person: PersonPrincipal }) {
  const t = useTranslations('items.about');
  const tags = useTranslations('tags');
  const all = useTranslations();
  const reasonOf = useHoldReason();
  const quantity = item.quantity === null ? null : all('items.quantityOf', { quantity: item.quantity });
  return (
    <section className={classes.card} aria-label={t('title', { item: item.item })}>
      <h2>
        <CodeText code={item.item} kind="item" />
      </h2>
      <div className={classes.facts}>
        <Facts
          facts={[
            [t('kind'), tags(`itemKind.${item.kind}`)],
            [t('part'), item.part],
            [t('lot'), item.lot === null ? null : <CodeText key="lot" code={item.lot} kind="lot" />],
            [t('supplier'), item.supplier],
            [t('quantity'), quantity],
            [
              t('inspected'),
              item.inspected === null ? null : <ResultTag key="result" result={item.inspected} />,
            ],
            [t('mounted'), item.mounted.map((stand) => t('mountedAt', stand)).join(', ')],
            [t('retired'), item.isRetired && t('yes')],
          ]}
        />
      </div>
      {item.holds.map((hold) => (
        <p key={hold.hold} className={classes.strip} data-meaning="caution">
          <IconHandStop aria-hidden />
          <span className={classes.grow}>
            {tags('hold.open')}: {reasonOf(hold.reason)}
          </span>
        </p>
      ))}
      {may(person, 'event:hold.placed') && (
        <a className={classes.button} href={`/holds?kind=item&id=${encodeURIComponent(item.item)}`}>
          {all('items.toHolds')}
        </a>
      )}
    </section>
  );
}
