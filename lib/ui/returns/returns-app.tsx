'use client';

import { IconRoute } from '@tabler/icons-react';
import Link from 'next/link';
import { useState } from 'react';
import { useTranslations } from 'use-intl';
import type { PersonPrincipal } from '@/lib/domain/people/principal';
import { codeHref } from '@/lib/ui/code-href';
import { AboutUnit } from '@/lib/ui/returns/about-unit';
import { ReturnForm } from '@/lib/ui/returns/return-form';
import { ScanBox } from '@/lib/ui/scan-box';
import { BigButton } from '@/lib/ui/shop/big-button';
import { DeskFrame } from '@/lib/ui/shop/desk-frame';
import classes from '@/lib/ui/shop/shop.module.css';
import { giveSignal } from '@/lib/ui/shop/signals';
import { UnitCautions } from '@/lib/ui/shop/unit-cautions';
import { useFirstScan } from '@/lib/ui/shop/use-first-scan';
import { type LookedUp, useLookedUp } from '@/lib/ui/shop/use-looked-up';
import { VerdictPanel } from '@/lib/ui/verdict/verdict-panel';

type Props = {
  person: PersonPrincipal;
  name: string | null;
  changePerson: () => Promise<void>;
  firstScan: string | null;
};

/** Returns: scan what came back, see where it was, receive it. */
export function ReturnsApp(props: Props) {
  const t = useTranslations('returns');
  return (
    <DeskFrame {...props} title={t('title')}>
      <ReturnDesk firstScan={props.firstScan} />
    </DeskFrame>
  );
}

function ReturnDesk({ firstScan }: { firstScan: string | null }) {
  const t = useTranslations('returns');
  const { found, lookUp, clear } = useLookedUp();
  const [done, setDone] = useState<string | null>(null);
  const scan = async (code: string): Promise<void> => {
    setDone(null);
    const picture = await lookUp(code);
    giveSignal(picture?.unit == null ? 'stop' : picture.unit.cautions.length > 0 ? 'attention' : 'done');
  };
  useFirstScan(firstScan, (code) => void scan(code));
  const unit = found?.scan?.unit ?? null;
  return (
    <>
      <ScanBox label={t('scan')} onScan={(code) => void scan(code)} />
      {found === null && done === null && <VerdictPanel kind="scan" text={t('ready')} />}
      {found === null && done !== null && (
        <>
          <VerdictPanel kind="go" text={t('done', { unit: done })} />
          <WholeLife unit={done} />
        </>
      )}
      {found !== null && unit === null && <NotFound found={found} />}
      {unit !== null && (
        <div className={classes.columns}>
          <div className={classes.stack}>
            <UnitCautions unit={unit.unit} cautions={unit.cautions} />
            <ReturnForm
              key={unit.unit}
              unit={unit}
              onDone={() => {
                setDone(unit.unit);
                clear();
              }}
            />
            <div className={classes.row}>
              <BigButton onPress={clear}>{t('form.cancel')}</BigButton>
            </div>
          </div>
          <div className={classes.stack}>
            <AboutUnit unit={unit} />
            <WholeLife unit={unit.unit} />
          </div>
        </div>
      )}
    </>
  );
}

function NotFound({ found: { code, scan, isAsking } }: { found: LookedUp }) {
  const t = useTranslations('returns');
  if (isAsking) return <VerdictPanel kind="busy" text={t('looking', { code })} />;
  if (scan === null) return <VerdictPanel kind="busy" text={t('unanswered', { code })} />;
  return (
    <VerdictPanel
      kind="stop"
      text={t('unknown', { code })}
      reasons={[{ code: 'unknown_unit', unit: code }]}
    />
  );
}

function WholeLife({ unit }: { unit: string }) {
  const t = useTranslations('returns');
  const href = codeHref('unit', unit);
  if (href === null) return null;
  return (
    <div className={classes.row}>
      <Link className={classes.button} href={href} prefetch={false}>
        <IconRoute aria-hidden />
        {t('toUnit', { unit })}
      </Link>
    </div>
  );
}
