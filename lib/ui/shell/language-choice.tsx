'use client';

import { useLocale, useTranslations } from 'use-intl';
import { LANGUAGES } from '@/lib/domain/language';
import { setLanguage } from '@/lib/ui/messages/set-language';
import { BigButton } from '@/lib/ui/shop/big-button';
import classes from '@/lib/ui/shop/shop.module.css';

const CHOICES = Object.keys(LANGUAGES).filter((tag): tag is keyof typeof LANGUAGES => tag in LANGUAGES);

/** The languages of this device, each named in itself, so that whoever looks for theirs can read it. */
export function LanguageChoice() {
  const t = useTranslations('scanning.device');
  const language = useLocale();
  return (
    <fieldset className={classes.plainFieldset}>
      <legend className={classes.line}>{t('language')}</legend>
      <div className={classes.row}>
        {CHOICES.map((tag) => (
          <BigButton key={tag} size="normal" isPressed={tag === language} onPress={() => setLanguage(tag)}>
            <span lang={tag}>{LANGUAGES[tag]}</span>
          </BigButton>
        ))}
      </div>
    </fieldset>
  );
}
