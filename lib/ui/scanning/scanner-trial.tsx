'use client';

import { useState } from 'react';
import { useTranslations } from 'use-intl';
import type { LabelFacts } from '@/lib/domain/scanning/label-facts';
import { ScanBox } from '@/lib/ui/scan-box';
import classes from '@/lib/ui/shop/shop.module.css';
import { giveSignal } from '@/lib/ui/shop/signals';

const FACTS = ['packageId', 'serial', 'lot', 'part', 'quantity', 'supplier'] as const;

/** A box that does nothing but show what came: the code, and what else the label said. */
export function ScannerTrial() {
  const t = useTranslations('scanning.settings');
  const [got, setGot] = useState<{ code: string; label: LabelFacts | null } | null>(null);
  return (
    <div className={classes.stack}>
      <ScanBox
        label={t('try')}
        onScan={(code, label) => {
          giveSignal('done');
          setGot({ code, label });
        }}
      />
      <div role="status">
        {got !== null && (
          <div className={classes.strip} data-meaning="go">
            <div className={classes.grow}>
              <p className={classes.code}>{t('got', { code: got.code })}</p>
              {FACTS.map((fact) => {
                const value = got.label?.[fact] ?? null;
                return value === null ? null : (
                  <p key={fact} className={classes.line}>
                    {t(`facts.${fact}`)}: <span className={classes.code}>{value}</span>
                  </p>
                );
              })}
            </div>
          </div>
        )}
      </div>
    </div>
  );
}
