'use client';

import { IconArrowBackUp, IconBoxSeam, IconSquarePlus } from '@tabler/icons-react';
import { useTranslations } from 'use-intl';
import { reasonsToShow } from '@/lib/domain/gate/reasons-to-show';
import type { PackDesk, PackDone, PackInput } from '@/lib/domain/packing/desk/pack-desk';
import { BigButton } from '@/lib/ui/shop/big-button';
import classes from '@/lib/ui/shop/shop.module.css';
import { UnitCautions } from '@/lib/ui/shop/unit-cautions';
import { useLabelWords } from '@/lib/ui/shop/use-label-words';
import { VerdictPanel } from '@/lib/ui/verdict/verdict-panel';

type Props = { state: PackDesk; dispatch: (input: PackInput) => void };

/** The one thing to know now: what to scan, that it is in, or that it must not go in. */
export function PackStatus({ state, dispatch }: Props) {
  return (
    <>
      <Verdict state={state} />
      {state.caution !== null && <UnitCautions {...state.caution} />}
      {state.notice !== null && <Notice notice={state.notice} dispatch={dispatch} />}
      {state.done !== null && 'isNew' in state.done && state.done.isNew && (
        <MadeNew container={made(state.done)} dispatch={dispatch} />
      )}
      {state.units.length > 0 && <PutAside dispatch={dispatch} />}
    </>
  );
}

function Verdict({ state }: { state: PackDesk }) {
  const t = useTranslations('pack');
  const { stop, sending, done, units, container, mode } = state;
  if (stop !== null)
    return (
      <VerdictPanel
        kind="stop"
        text={t(`stopped.${stop.about.what}`, wordsOf(stop.about))}
        reasons={reasonsToShow(stop.reasons)}
      />
    );
  if (sending !== null) return <VerdictPanel kind="busy" text={t('sending')} />;
  if (units.length > 0)
    return <VerdictPanel kind="scan" text={t('unitsWait', { units: units.join(', ') })} />;
  if (mode === 'nest' && container !== null)
    return <VerdictPanel kind="scan" text={t('nestReady', { container })} />;
  if (mode === 'take_out') return <VerdictPanel kind="scan" text={t('takeOutReady')} />;
  if (done !== null) return <VerdictPanel kind="go" text={t(`done.${done.what}`, wordsOf(done))} />;
  if (container === null) return <VerdictPanel kind="scan" text={t('start')} />;
  const fresh = state.isNew ? `${t('madeNew', { container })} ` : '';
  return <VerdictPanel kind="scan" text={`${fresh}${t('ready', { container })}`} />;
}

/** Every fact that a sentence about a packing may name. */
function wordsOf(done: PackDone): { unit: string; container: string; other: string; shipment: string } {
  return { unit: '', other: '', shipment: '', ...done };
}

function Notice({
  notice,
  dispatch,
}: {
  notice: NonNullable<PackDesk['notice']>;
  dispatch: Props['dispatch'];
}) {
  const t = useTranslations('pack');
  const wordsOf = useLabelWords();
  const { code, scanned, label } = notice;
  const words = code === 'is_label' ? label && wordsOf(label) : t(`notice.${code}`, { scanned });
  return (
    <div className={classes.strip} data-meaning={code === 'already_here' ? 'act' : 'caution'} role="alert">
      <span className={classes.grow}>{words}</span>
      {(code === 'unknown' || code === 'unknown_outer') && (
        <>
          <BigButton
            look="act"
            shape={IconBoxSeam}
            onPress={() =>
              dispatch(
                code === 'unknown'
                  ? { kind: 'opened', container: scanned }
                  : { kind: 'nested_in_new', into: scanned },
              )
            }
          >
            {t(code === 'unknown' ? 'openNew' : 'nestNew', { container: scanned })}
          </BigButton>
          <BigButton onPress={() => dispatch({ kind: 'forgot' })}>{t('notContainer')}</BigButton>
        </>
      )}
    </div>
  );
}

/** The container that a packing has made. */
function made(done: PackDone): string {
  return done.what === 'nested' ? done.other : done.container;
}

/** Nobody is asked, since the code looks like the others: but that it is new is said, and can be taken back. */
function MadeNew({ container, dispatch }: { container: string; dispatch: Props['dispatch'] }) {
  const t = useTranslations('pack');
  return (
    <div className={classes.strip} data-meaning="act" role="status">
      <IconSquarePlus aria-hidden />
      <span className={classes.grow}>{t('madeNew', { container })}</span>
      <BigButton shape={IconArrowBackUp} onPress={() => dispatch({ kind: 'undone' })}>
        {t('undoNew')}
      </BigButton>
    </div>
  );
}

function PutAside({ dispatch }: Pick<Props, 'dispatch'>) {
  const t = useTranslations('pack');
  return (
    <div className={classes.row}>
      <BigButton onPress={() => dispatch({ kind: 'put_aside' })}>{t('putAside')}</BigButton>
    </div>
  );
}
