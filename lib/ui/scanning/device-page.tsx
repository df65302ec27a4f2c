'use client';

import { useTranslations } from 'use-intl';
import { ScannerForm } from '@/lib/ui/scanning/scanner-form';
import { SCANNER_KEY } from '@/lib/ui/scanning/scanner-key';
import { ScannerTrial } from '@/lib/ui/scanning/scanner-trial';
import { Section } from '@/lib/ui/section';
import { LanguageChoice } from '@/lib/ui/shell/language-choice';
import { Screen } from '@/lib/ui/shell/screen';
import classes from '@/lib/ui/shop/shop.module.css';
import { useKeptChoice } from '@/lib/ui/shop/use-kept-choice';

/** What this device alone keeps, with a box to try it. */
export function DevicePage() {
  const t = useTranslations('scanning');
  const [kept, keep] = useKeptChoice(SCANNER_KEY);
  return (
    <Screen title={t('device.title')}>
      <div className={classes.shop}>
        <p className={classes.quiet}>{t('device.text')}</p>
        <Section title={t('device.language')}>
          <p className={classes.quiet}>{t('device.languageText')}</p>
          <LanguageChoice />
        </Section>
        <Section title={t('settings.title')}>
          {kept !== undefined && (
            <div className={classes.columns}>
              <ScannerForm key={kept} kept={kept} onSave={(settings) => keep(JSON.stringify(settings))} />
              <ScannerTrial key={`try ${kept}`} />
            </div>
          )}
        </Section>
      </div>
    </Screen>
  );
}
