'use client';

import { TextInput } from '@mantine/core';
import { type FormEvent, useState } from 'react';
import { useTranslations } from 'use-intl';
import { may } from '@/lib/domain/people/permissions';
import type { PersonPrincipal } from '@/lib/domain/people/principal';
import type { Changeover, ChangeoverInput } from '@/lib/domain/station/changeover/changeover';
import { BigButton } from '@/lib/ui/shop/big-button';
import { CountDoubt } from '@/lib/ui/shop/count-doubt';
import { COUNT_METHODS, type CountMethod, readQuantity } from '@/lib/ui/shop/count-method';
import classes from '@/lib/ui/shop/shop.module.css';
import { useCountDoubt } from '@/lib/ui/shop/use-count-doubt';

/** What came out of a slot may be counted now; the next scan does not wait for it. */
export function ReturnedCount({
  returned,
  person,
  dispatch,
}: {
  returned: NonNullable<Changeover['returned']>;
  person: PersonPrincipal;
  dispatch: (input: ChangeoverInput) => void;
}) {
  const t = useTranslations('changeover.returned');
  const doubts = useTranslations('record.countDoubt');
  const [quantity, setQuantity] = useState('');
  const [method, setMethod] = useState<CountMethod>('by-hand');
  const [isBad, setBad] = useState(false);
  const doubt = useCountDoubt(returned.knownQuantity, readQuantity(quantity));
  if (!may(person, 'event:item.counted')) return null;
  const save = (event: FormEvent): void => {
    event.preventDefault();
    const count = readQuantity(quantity);
    setBad(count === null);
    if (count !== null && doubt.mayPass()) dispatch({ kind: 'counted', quantity: count, method });
  };
  return (
    <form className={classes.card} data-meaning="act" onSubmit={save}>
      <h2>{t('title', { item: returned.item })}</h2>
      <TextInput
        data-takes-scan
        size="xl"
        label={t('quantity')}
        inputMode="decimal"
        value={quantity}
        onChange={(event) => setQuantity(event.currentTarget.value)}
        error={isBad ? t('bad') : null}
        autoComplete="off"
      />
      <fieldset className={classes.plainFieldset}>
        <legend className={classes.line}>{t('method')}</legend>
        <div className={classes.row}>
          {COUNT_METHODS.map((each) => (
            <BigButton key={each} isPressed={each === method} onPress={() => setMethod(each)}>
              {t(`methods.${each}`)}
            </BigButton>
          ))}
        </div>
      </fieldset>
      <CountDoubt doubted={doubt.doubted} known={returned.knownQuantity} />
      <div className={classes.row}>
        <BigButton type="submit" look="act">
          {doubt.doubted === null ? t('save') : doubts('save', { quantity: doubt.doubted })}
        </BigButton>
        <BigButton onPress={() => dispatch({ kind: 'cleared' })}>{t('skip')}</BigButton>
      </div>
    </form>
  );
}
