'use client';

import { IconAlertTriangleFilled } from '@tabler/icons-react';
import { useEffect, useState } from 'react';
import { useTranslations } from 'use-intl';
import { identifyCode } from '@/lib/ui/shop/identify-code';
import classes from '@/lib/ui/shop/shop.module.css';

/** Says so when no plant file names a part: it may be booked in, and may be a slip. Nothing for an empty text. */
export function UnknownPart({ part }: { part: string }) {
  const t = useTranslations('items');
  const [unknown, setUnknown] = useState<string | null>(null);
  const number = part.trim();
  useEffect(() => {
    let isOver = false;
    if (number !== '')
      void identifyCode(number).then((scan) => {
        if (!isOver) setUnknown(scan === null || scan.isPart ? null : number);
      });
    return () => {
      isOver = true;
    };
  }, [number]);
  if (number === '' || unknown !== number) return null;
  return (
    <p className={classes.strip} data-meaning="caution" role="alert">
      <IconAlertTriangleFilled aria-hidden />
      <span className={classes.grow}>{t('partUnknown', { part: number })}</span>
    </p>
  );
}
