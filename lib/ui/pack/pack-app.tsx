'use client';

import { useTranslations } from 'use-intl';
import type { PersonPrincipal } from '@/lib/domain/people/principal';
import { PackDeskView } from '@/lib/ui/pack/pack-desk-view';
import { RecordProvider, useRecorder } from '@/lib/ui/record/record-provider';
import { Screen } from '@/lib/ui/shell/screen';
import classes from '@/lib/ui/shop/shop.module.css';

export type PackAppProps = {
  person: PersonPrincipal;
  /** The person's name in the plant, or null. */
  name: string | null;
  changePerson: () => Promise<void>;
  /** A container that the address asks for, or null. */
  container: string | null;
  /** A code that was scanned before the page had woken up, or null. */
  firstScan: string | null;
};

/** Packing and shipping. */
export function PackApp(props: PackAppProps) {
  return (
    <RecordProvider badge={props.person.badge}>
      <Awake {...props} />
    </RecordProvider>
  );
}

function Awake(props: PackAppProps) {
  const t = useTranslations();
  if (useRecorder() !== null) return <PackDeskView {...props} />;
  return (
    <Screen title={t('pack.title')}>
      <p className={classes.quiet}>{t('record.loading')}</p>
    </Screen>
  );
}
