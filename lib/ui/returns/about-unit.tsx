'use client';

import { useTranslations } from 'use-intl';
import type { UnitPicture } from '@/lib/domain/station/scan-picture';
import { CodeText } from '@/lib/ui/code-text';
import { Facts } from '@/lib/ui/facts';
import { PlaceText } from '@/lib/ui/place-text';
import classes from '@/lib/ui/shop/shop.module.css';
import { PlaceTag } from '@/lib/ui/tags/place-tag';
import { useHoldReason } from '@/lib/ui/verdict/use-hold-reason';

/** What the record says of a unit before it is received as a return. */
export function AboutUnit({ unit }: { unit: UnitPicture }) {
  const t = useTranslations('returns.about');
  const reasonOf = useHoldReason();
  return (
    <section className={classes.card} aria-label={t('title', { unit: unit.unit })}>
      <h2>
        <CodeText code={unit.unit} kind="unit" />
      </h2>
      <div className={classes.facts}>
        <Facts
          facts={[
            [t('product'), [unit.product, unit.revision].filter((word) => word !== null).join(' ')],
            [
              t('place'),
              <span key="place">
                <PlaceTag place={unit.place} /> <PlaceText place={unit.place} />
              </span>,
            ],
            [
              t('inside'),
              unit.outer === null ? null : <CodeText key="outer" code={unit.outer} kind="unit" />,
            ],
            [t('signed'), unit.isSigned ? t('yes') : t('no')],
            [t('failure'), unit.failure?.operation],
            [t('holds'), unit.holds.map((hold) => reasonOf(hold.reason)).join('; ')],
          ]}
        />
      </div>
    </section>
  );
}
