'use client';

import { IconRefresh } from '@tabler/icons-react';
import { useTranslations } from 'use-intl';
import { partsToFit } from '@/lib/domain/station/session/processed-draft';
import type { Session, Work } from '@/lib/domain/station/session/session';
import type { Press } from '@/lib/domain/station/session/session-input';
import type { StationPicture } from '@/lib/domain/station/station-picture';
import { BigButton } from '@/lib/ui/shop/big-button';
import classes from '@/lib/ui/shop/shop.module.css';

/** Parts that are scanned here, each with the lot that is used for it until another one is scanned. */
export function PartList({
  work,
  session,
  picture,
  press,
}: {
  work: Work;
  session: Session;
  picture: StationPicture;
  press: (press: Press) => void;
}) {
  const t = useTranslations('station.parts');
  const parts = partsToFit(work, session, { picture });
  const { product } = work.about;
  if (parts.length === 0 && work.tools.length === 0) return null;
  return (
    <section className={classes.card} aria-label={t('title')}>
      <h2>{t('title')}</h2>
      <ul className={classes.list}>
        {parts.map(({ part, positions, item, isWithout }) => (
          <li key={part}>
            <span className={classes.grow}>
              <strong>
                {positions.length === 0
                  ? t('itemAnywhere', { part })
                  : t('item', { part, positions: positions.join(', ') })}
              </strong>{' '}
              {item === null ? (
                <span>{isWithout ? t('without') : t('missing')}</span>
              ) : (
                <span className={classes.code}>{t('lot', { item })}</span>
              )}
            </span>
            {item !== null && product !== null && (
              <BigButton
                look="quiet"
                shape={IconRefresh}
                label={t('change', { part })}
                onPress={() =>
                  press({ button: 'forget_lot', product: product.product, revision: product.revision, part })
                }
              >
                {''}
              </BigButton>
            )}
          </li>
        ))}
      </ul>
      {work.tools.length > 0 && (
        <p>{t('tools', { items: work.tools.map((tool) => tool.item).join(', ') })}</p>
      )}
    </section>
  );
}
