'use client';

import { useTranslations } from 'use-intl';
import type { PackDesk } from '@/lib/domain/packing/desk/pack-desk';
import { ContainerCard } from '@/lib/ui/pack/container-card';
import type { PackAppProps } from '@/lib/ui/pack/pack-app';
import { PackStatus } from '@/lib/ui/pack/pack-status';
import { ShipForm } from '@/lib/ui/pack/ship-form';
import { usePackDesk } from '@/lib/ui/pack/use-pack-desk';
import { ScanBox } from '@/lib/ui/scan-box';
import { Screen } from '@/lib/ui/shell/screen';
import { PersonBar } from '@/lib/ui/shop/person-bar';
import { RefusedPanel } from '@/lib/ui/shop/refused-panel';
import { SenderStrip } from '@/lib/ui/shop/sender-strip';
import classes from '@/lib/ui/shop/shop.module.css';
import { TroublePanel } from '@/lib/ui/shop/trouble-panel';
import { useFirstScan } from '@/lib/ui/shop/use-first-scan';
import { useFocusRescue } from '@/lib/ui/shop/use-focus-rescue';
import { useScrollUp } from '@/lib/ui/shop/use-scroll-up';
import { useUnhurriedScan } from '@/lib/ui/shop/use-unhurried-scan';

/** The packing bench: the scan box, the verdict, the open container with its contents, and what ships it. */
export function PackDeskView({ person, name, changePerson, container: asked, firstScan }: PackAppProps) {
  const t = useTranslations('pack');
  const { state, dispatch, picture, trouble, reload } = usePackDesk(asked);
  const label = useLabel(state);
  const scan = useUnhurriedScan(state.stop, (code) => dispatch({ kind: 'scanned', code }));
  useFirstScan(firstScan, scan);
  useFocusRescue(state.mode);
  useScrollUp(state.done ?? state.stop ?? state.notice);
  return (
    <Screen
      title={t('title')}
      beside={<PersonBar badge={person.badge} name={name} changePerson={changePerson} />}
    >
      <div className={classes.shop}>
        <SenderStrip />
        <ScanBox label={label} onScan={scan} />
        <RefusedPanel />
        <div className={classes.columns}>
          <div className={classes.stack}>
            <PackStatus state={state} dispatch={dispatch} />
            {state.container !== null && picture === null ? (
              <TroublePanel trouble={trouble} onRetry={reload} />
            ) : (
              <ContainerCard state={state} picture={picture} dispatch={dispatch} />
            )}
          </div>
          {picture !== null && state.container !== null && (
            <ShipForm
              key={state.container}
              picture={picture}
              isSending={state.sending !== null}
              dispatch={dispatch}
            />
          )}
        </div>
      </div>
    </Screen>
  );
}

function useLabel({ mode, container, units }: PackDesk): string {
  const t = useTranslations('pack.scan');
  if (mode === 'take_out') return t('takeOut');
  if (mode === 'nest') return t('nest');
  if (units.length > 0) return t('container');
  return container === null ? t('unitOrContainer') : t('unit');
}
