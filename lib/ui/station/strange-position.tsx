'use client';

import { IconAlertTriangle } from '@tabler/icons-react';
import { useTranslations } from 'use-intl';
import { type ProductPicture, similarPositions } from '@/lib/domain/station/product-picture';
import { BigButton } from '@/lib/ui/shop/big-button';
import { ChoiceGrid } from '@/lib/ui/shop/choice-grid';
import classes from '@/lib/ui/shop/shop.module.css';

/** A position that the BOM does not name: those that it may have meant, or as it was typed, or another one. */
export function StrangePosition({
  position,
  product,
  onChoose,
  onBack,
}: {
  position: string;
  product: ProductPicture;
  onChoose: (position: string) => void;
  onBack: () => void;
}) {
  const t = useTranslations('station.strange');
  const similar = similarPositions(product, position);
  return (
    <section className={classes.card} data-meaning="caution" role="alert">
      <h2>
        <IconAlertTriangle aria-hidden /> {t('title', { position })}
      </h2>
      <p>{t('text', { product: product.product, revision: product.revision })}</p>
      {similar.length > 0 && (
        <>
          <p className={classes.quiet}>{t('similar')}</p>
          <ChoiceGrid isDense label={t('similar')} codes={similar} onChoose={onChoose} />
        </>
      )}
      <div className={classes.row}>
        <BigButton onPress={() => onChoose(position)}>{t('record', { position })}</BigButton>
        <BigButton look="quiet" hint="Esc" onPress={onBack}>
          {t('back')}
        </BigButton>
      </div>
    </section>
  );
}
