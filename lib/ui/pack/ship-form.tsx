'use client';

import { TextInput } from '@mantine/core';
import { IconTruckDelivery } from '@tabler/icons-react';
import { type FormEvent, useId, useState } from 'react';
import { useTranslations } from 'use-intl';
import { codeFault } from '@/lib/domain/codes';
import type { PackInput } from '@/lib/domain/packing/desk/pack-desk';
import type { PackPicture } from '@/lib/domain/packing/pack-picture';
import { BigButton } from '@/lib/ui/shop/big-button';
import classes from '@/lib/ui/shop/shop.module.css';
import { ReasonList } from '@/lib/ui/verdict/reason-list';

const REASONS_SHOWN_MAX = 20;

/** What stops the open container from leaving, or the words that let it go. */
export function ShipForm({
  picture,
  isSending,
  dispatch,
}: {
  picture: PackPicture;
  isSending: boolean;
  dispatch: (input: PackInput) => void;
}) {
  const t = useTranslations('pack.ship');
  const { container, blocked, unitCount, isKnown, shipment: left } = picture;
  if (left !== null) return null;
  const isEmpty = !isKnown || unitCount === 0;
  return (
    <section className={classes.card} aria-label={t('title', { container })}>
      <h2>{t('title', { container })}</h2>
      {isEmpty ? (
        <p className={classes.quiet}>{t('empty', { container })}</p>
      ) : blocked.length > 0 ? (
        <>
          <p className={classes.strip} data-meaning="stop">
            {t('blocked', { container, count: blocked.length })}
          </p>
          <ReasonList reasons={blocked.slice(0, REASONS_SHOWN_MAX)} />
        </>
      ) : (
        <Words
          container={container}
          customers={picture.customers}
          isSending={isSending}
          dispatch={dispatch}
        />
      )}
    </section>
  );
}

function Words({
  container,
  customers,
  isSending,
  dispatch,
}: {
  container: string;
  customers: readonly string[];
  isSending: boolean;
  dispatch: (input: PackInput) => void;
}) {
  const t = useTranslations('pack.ship');
  const [shipment, setShipment] = useState('');
  const [customer, setCustomer] = useState('');
  const [destination, setDestination] = useState('');
  const listId = useId();
  const [isTried, setTried] = useState(false);
  const shipmentFault =
    shipment.trim() === '' ? t('needed') : codeFault(shipment.trim()) === null ? null : t('notCode');
  const customerFault = customer.trim() === '' ? t('needed') : null;
  const ship = (event: FormEvent): void => {
    event.preventDefault();
    setTried(true);
    if (shipmentFault !== null || customerFault !== null) return;
    dispatch({
      kind: 'ship',
      shipment: shipment.trim(),
      customer: customer.trim(),
      destination: destination.trim(),
    });
  };
  return (
    <form className={classes.stack} onSubmit={ship} noValidate>
      <p className={classes.quiet}>{t('free', { container })}</p>
      <TextInput
        data-takes-scan
        size="xl"
        label={t('shipment')}
        value={shipment}
        onChange={(event) => setShipment(event.currentTarget.value)}
        error={isTried ? shipmentFault : null}
        autoComplete="off"
      />
      <TextInput
        data-takes-scan
        size="xl"
        label={t('customer')}
        value={customer}
        list={listId}
        onChange={(event) => setCustomer(event.currentTarget.value)}
        error={isTried ? customerFault : null}
        autoComplete="off"
      />
      <datalist id={listId}>
        {customers.map((each) => (
          <option key={each} value={each} />
        ))}
      </datalist>
      <TextInput
        data-takes-scan
        size="xl"
        label={t('destination')}
        value={destination}
        onChange={(event) => setDestination(event.currentTarget.value)}
        autoComplete="off"
      />
      <BigButton type="submit" look="act" size="huge" shape={IconTruckDelivery} isDisabled={isSending}>
        {t('record', { container })}
      </BigButton>
    </form>
  );
}
