'use client';

import { IconCertificate, IconLock } from '@tabler/icons-react';
import { useTranslations } from 'use-intl';
import { Moment } from '@/lib/ui/moment';
import { Section } from '@/lib/ui/section';
import { LanguageChoice } from '@/lib/ui/shell/language-choice';
import { Screen } from '@/lib/ui/shell/screen';
import classes from '@/lib/ui/trust/trust.module.css';

const SYSTEMS = ['android', 'ipados', 'windows', 'other'] as const;
const STEPS = ['first', 'second', 'third'] as const;

/** How a device comes to trust this server's certificate authority: download, compare, install, open. */
export function TrustPage({
  fingerprint,
  endsAt,
  address,
}: {
  fingerprint: string;
  endsAt: string;
  address: string;
}) {
  const t = useTranslations('trust');
  const lines = fingerprint.match(/.{1,24}/g) ?? [];
  return (
    <Screen title={t('title')}>
      <div className={classes.page}>
        <LanguageChoice />
        <p>{t('why')}</p>
        <p>{t('once')}</p>
        <Section title={t('download.title')}>
          <p>
            <a className={classes.button} href="/trust/authority.crt" download>
              <IconCertificate aria-hidden />
              {t('download.link')}
            </a>
          </p>
          <p>
            {t('download.until')} <Moment at={endsAt} />
          </p>
        </Section>
        <Section title={t('compare.title')}>
          <p>{t('compare.text')}</p>
          <code className={classes.fingerprint}>
            {lines.map((line) => (
              <span key={line}>{line}</span>
            ))}
          </code>
        </Section>
        <Section title={t('install.title')}>
          {SYSTEMS.map((system) => (
            <div key={system} className={classes.system}>
              <h3>{t(`install.${system}.name`)}</h3>
              <ol>
                {STEPS.map((step) => (
                  <li key={step}>{t(`install.${system}.${step}`)}</li>
                ))}
              </ol>
            </div>
          ))}
          <p>{t('install.clock')}</p>
        </Section>
        <Section title={t('open.title')}>
          <p>
            <a className={classes.button} href={address}>
              <IconLock aria-hidden />
              {t('open.link', { address })}
            </a>
          </p>
          <p>{t('open.warning')}</p>
        </Section>
      </div>
    </Screen>
  );
}
