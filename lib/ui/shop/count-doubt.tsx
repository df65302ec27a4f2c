'use client';

import { IconAlertTriangleFilled } from '@tabler/icons-react';
import { useTranslations } from 'use-intl';
import classes from '@/lib/ui/shop/shop.module.css';

/** The question about a count above the quantity last known; nothing while none is asked. */
export function CountDoubt({ doubted, known }: { doubted: number | null; known: number | null }) {
  const t = useTranslations('record.countDoubt');
  if (doubted === null || known === null) return null;
  return (
    <p className={classes.strip} data-meaning="caution" role="alert">
      <IconAlertTriangleFilled aria-hidden />
      <span className={classes.grow}>{t('ask', { known })}</span>
    </p>
  );
}
