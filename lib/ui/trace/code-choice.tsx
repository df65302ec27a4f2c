'use client';

import Link from 'next/link';
import { useTranslations } from 'use-intl';
import type { ScannedKind } from '@/lib/domain/genealogy/scanned-kind';
import { Section } from '@/lib/ui/section';
import { scannedAddress } from '@/lib/ui/trace/scanned-address';
import classes from '@/lib/ui/trace/trace.module.css';

/** A code as far as a heading can take it. */
function cut(code: string): string {
  return code.length > 80 ? `${code.slice(0, 80)}…` : code;
}

/** What was scanned, when it is not one thing: nothing, or several to choose from. */
export function CodeChoice({ code, kinds }: { code: string; kinds: readonly ScannedKind[] }) {
  const t = useTranslations('trace');
  if (kinds.length === 0)
    return (
      <Section title={t('unknown.title', { code: cut(code) })}>
        <p role="alert">{t('unknown.text')}</p>
      </Section>
    );
  return (
    <Section title={t('choice.title', { code })}>
      <p>{t('choice.text')}</p>
      <ul className={classes.choices}>
        {kinds.map((kind) => (
          <li key={kind}>
            <Link href={scannedAddress(kind, code)} prefetch={false}>
              {t(`kind.${kind}`)}
            </Link>
          </li>
        ))}
      </ul>
    </Section>
  );
}
