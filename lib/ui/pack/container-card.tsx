'use client';

import { IconBoxAlignTop, IconPackageExport, IconX } from '@tabler/icons-react';
import { useTranslations } from 'use-intl';
import type { PackDesk, PackInput } from '@/lib/domain/packing/desk/pack-desk';
import type { PackPicture } from '@/lib/domain/packing/pack-picture';
import { CodeText } from '@/lib/ui/code-text';
import { BigButton } from '@/lib/ui/shop/big-button';
import classes from '@/lib/ui/shop/shop.module.css';

const UNITS_SHOWN_MAX = 100;

/** The open container: how much is in it, what, and what can be done with it. */
export function ContainerCard({
  state,
  picture,
  dispatch,
}: {
  state: PackDesk;
  picture: PackPicture | null;
  dispatch: (input: PackInput) => void;
}) {
  const t = useTranslations('pack.container');
  const { container, mode } = state;
  const isTakingOut = mode === 'take_out';
  return (
    <section className={classes.card} aria-label={t('title')}>
      <h2>{t('title')}</h2>
      {container === null || picture === null ? (
        <p className={classes.quiet}>{t('none')}</p>
      ) : (
        <Contents picture={picture} dispatch={dispatch} />
      )}
      <div className={classes.row}>
        {container !== null && (
          <>
            <BigButton
              shape={IconPackageExport}
              isPressed={mode === 'nest'}
              onPress={() => dispatch({ kind: 'mode', mode: mode === 'nest' ? 'pack' : 'nest' })}
            >
              {mode === 'nest' ? t('nestEnd') : t('nest')}
            </BigButton>
            <BigButton shape={IconX} onPress={() => dispatch({ kind: 'closed' })}>
              {t('close')}
            </BigButton>
          </>
        )}
        <BigButton
          shape={IconBoxAlignTop}
          isPressed={isTakingOut}
          onPress={() => dispatch({ kind: 'mode', mode: isTakingOut ? 'pack' : 'take_out' })}
        >
          {isTakingOut ? t('takeOutEnd') : t('takeOut')}
        </BigButton>
      </div>
    </section>
  );
}

function Contents({ picture, dispatch }: { picture: PackPicture; dispatch: (input: PackInput) => void }) {
  const t = useTranslations('pack.container');
  const { container, units, containers, inside, shipment, customer, unitCount } = picture;
  return (
    <>
      <p className={classes.spread}>
        <strong className={classes.heading}>
          <CodeText code={container} kind="container" />
        </strong>
        <strong className={classes.heading}>{t('count', { count: unitCount })}</strong>
      </p>
      {inside !== null && <p>{t('inside', { container: inside })}</p>}
      {shipment !== null && (
        <p className={classes.strip} data-meaning="caution">
          {t('shipped', { shipment, customer: customer ?? '' })}
        </p>
      )}
      {containers.length > 0 && (
        <ul className={classes.list} aria-label={t('containers', { container })}>
          {containers.map((inner) => (
            <li key={inner.container}>
              <span className={classes.grow}>
                <span className={classes.code}>{inner.container}</span>{' '}
                <span className={classes.quiet}>{t('unitCount', { count: inner.unitCount })}</span>
              </span>
              <BigButton
                label={t('unitTakeOut', { unit: inner.container })}
                onPress={() => dispatch({ kind: 'took_container_out', container: inner.container })}
              >
                {t('takeOutShort')}
              </BigButton>
            </li>
          ))}
        </ul>
      )}
      {units.length > 0 && (
        <ul className={classes.list} aria-label={t('units', { container })}>
          {units.slice(-UNITS_SHOWN_MAX).map(({ unit, product, revision }) => (
            <li key={unit}>
              <span className={classes.grow}>
                <span className={classes.code}>{unit}</span>{' '}
                <span className={classes.quiet}>
                  {product} {revision}
                </span>
              </span>
              <BigButton
                label={t('unitTakeOut', { unit })}
                onPress={() => dispatch({ kind: 'took_out', unit })}
              >
                {t('takeOutShort')}
              </BigButton>
            </li>
          ))}
        </ul>
      )}
      {units.length > UNITS_SHOWN_MAX && (
        <p className={classes.quiet}>{t('more', { count: units.length - UNITS_SHOWN_MAX })}</p>
      )}
    </>
  );
}
