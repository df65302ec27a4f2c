'use client';

import { TextInput } from '@mantine/core';
import { IconAlertOctagonFilled, IconCircleCheckFilled, IconPlus } from '@tabler/icons-react';
import { type FormEvent, useState } from 'react';
import { useFormatter, useTranslations } from 'use-intl';
import { codeFault } from '@/lib/domain/codes';
import {
  isBeyondLimits,
  type ReadingDraft,
  readingsToGive,
  readingValue,
  readingVerdict,
} from '@/lib/domain/station/session/reading-draft';
import type { Session, Work } from '@/lib/domain/station/session/session';
import type { Press } from '@/lib/domain/station/session/session-input';
import type { StationPicture } from '@/lib/domain/station/station-picture';
import { BigButton } from '@/lib/ui/shop/big-button';
import classes from '@/lib/ui/shop/shop.module.css';
import form from '@/lib/ui/station/readings-card.module.css';
import { Tag } from '@/lib/ui/tags/tag';

type Props = { work: Work; session: Session; picture: StationPicture; press: (press: Press) => void };

/** What is measured of the unit in work: a field for each, its limits beside it, and at once whether it is within them. */
export function ReadingsCard({ work, session, picture, press }: Props) {
  const t = useTranslations('station.readings');
  const [isAdding, setAdding] = useState(false);
  const readings = readingsToGive(work, session, picture);
  if (readings.length === 0 && !isAdding)
    return (
      <div className={classes.row}>
        <BigButton look="quiet" shape={IconPlus} onPress={() => setAdding(true)}>
          {t('add')}
        </BigButton>
      </div>
    );
  return (
    <section className={classes.card} aria-label={t('title')}>
      {readings.length > 0 && <h2>{t('title')}</h2>}
      {readings.map((reading) => (
        <ReadingField
          key={reading.name}
          reading={reading}
          onChange={(text) => press({ button: 'reading', reading: { ...reading, text } })}
        />
      ))}
      {isBeyondLimits(readings) && (
        <div className={classes.strip} data-meaning="stop" role="alert">
          <IconAlertOctagonFilled aria-hidden />
          <span className={classes.grow}>{t('suggestFail')}</span>
          <BigButton look="fail" hint="F9" onPress={() => press({ button: 'fail' })}>
            {t('fail')}
          </BigButton>
          <BigButton onPress={() => press({ button: 'pass_beyond' })}>{t('passAnyway')}</BigButton>
        </div>
      )}
      {isAdding ? (
        <NewReading
          onAdd={(reading) => {
            setAdding(false);
            press({ button: 'reading', reading });
          }}
          onCancel={() => setAdding(false)}
        />
      ) : (
        <div className={classes.row}>
          <BigButton shape={IconPlus} onPress={() => setAdding(true)}>
            {t('add')}
          </BigButton>
        </div>
      )}
    </section>
  );
}

function ReadingField({ reading, onChange }: { reading: ReadingDraft; onChange: (text: string) => void }) {
  const t = useTranslations('station.readings');
  const { name, unit, text } = reading;
  const limits = useLimits()(reading);
  return (
    <div className={form.reading}>
      <TextInput
        size="xl"
        className={form.value ?? ''}
        label={unit === null ? name : t('nameIn', { name, unit })}
        description={limits}
        value={text}
        maxLength={200}
        inputMode="decimal"
        autoComplete="off"
        error={readingVerdict(reading) !== 'none' && readingVerdict(reading) !== 'in'}
        onChange={(event) => onChange(event.currentTarget.value)}
        onKeyDown={(event) => {
          if (event.key !== 'Enter') return;
          event.preventDefault();
          nextField(event.currentTarget)?.focus();
        }}
      />
      <span className={form.verdict} role="status">
        <VerdictTag reading={reading} />
      </span>
    </div>
  );
}

function VerdictTag({ reading }: { reading: ReadingDraft }) {
  const t = useTranslations('station.readings.verdict');
  const verdict = readingVerdict(reading);
  if (verdict === 'none' || (verdict === 'in' && reading.low === null && reading.high === null)) return null;
  if (verdict === 'in')
    return (
      <Tag meaning="go" shape={IconCircleCheckFilled}>
        {t('in')}
      </Tag>
    );
  return (
    <Tag meaning="stop" shape={IconAlertOctagonFilled}>
      {t(verdict)}
    </Tag>
  );
}

/** Enter goes to the next reading, and from the last one back to the scan box. */
function nextField(field: HTMLInputElement): HTMLInputElement | null {
  const fields = [...document.querySelectorAll<HTMLInputElement>(`.${form.value} input`)];
  return fields[fields.indexOf(field) + 1] ?? document.querySelector<HTMLInputElement>('input[name=code]');
}

function useLimits(): (reading: ReadingDraft) => string | null {
  const t = useTranslations('station.readings');
  const { number } = useFormatter();
  const textOf = (value: number) => number(value, { maximumSignificantDigits: 9 });
  return ({ low, high }) => {
    if (low !== null && high !== null) return t('limits', { low: textOf(low), high: textOf(high) });
    if (low !== null) return t('limitLow', { low: textOf(low) });
    return high === null ? null : t('limitHigh', { high: textOf(high) });
  };
}

const EMPTY = { name: '', text: '', unit: '', low: '', high: '' };

function NewReading({ onAdd, onCancel }: { onAdd: (reading: ReadingDraft) => void; onCancel: () => void }) {
  const t = useTranslations('station.readings');
  const [typed, setTyped] = useState(EMPTY);
  const [isTried, setTried] = useState(false);
  const faults = faultsOf(typed);
  const add = (event: FormEvent): void => {
    event.preventDefault();
    setTried(true);
    if (Object.keys(faults).length > 0) return;
    const { name, text, unit, low, high } = typed;
    onAdd({
      name: name.trim(),
      text,
      unit: unit.trim() === '' ? null : unit.trim(),
      low: limitOf(low),
      high: limitOf(high),
    });
  };
  return (
    <form className={classes.stack} onSubmit={add} noValidate>
      <div className={form.fields}>
        {(['name', 'text', 'unit', 'low', 'high'] as const).map((field) => (
          <TextInput
            key={field}
            size="xl"
            label={t(`new.${field}`)}
            value={typed[field]}
            maxLength={200}
            autoComplete="off"
            autoFocus={field === 'name'}
            inputMode={field === 'name' || field === 'unit' ? 'text' : 'decimal'}
            error={isTried && faults[field] !== undefined ? t(`fault.${faults[field]}`) : null}
            onChange={(event) => setTyped({ ...typed, [field]: event.currentTarget.value })}
          />
        ))}
      </div>
      <div className={classes.row}>
        <BigButton look="act" type="submit">
          {t('new.add')}
        </BigButton>
        <BigButton look="quiet" onPress={onCancel}>
          {t('new.cancel')}
        </BigButton>
      </div>
    </form>
  );
}

type Fault = 'needed' | 'notNumber' | 'order';

function faultsOf(typed: typeof EMPTY): { [field in keyof typeof EMPTY]?: Fault } {
  const [low, high] = [readingValue(typed.low), readingValue(typed.high)];
  return {
    ...(codeFault(typed.name.trim()) !== null && { name: 'needed' as const }),
    ...(typed.text.trim() === '' && { text: 'needed' as const }),
    ...(typeof low === 'string' && { low: 'notNumber' as const }),
    ...(typeof high === 'string' && { high: 'notNumber' as const }),
    ...(typeof low === 'number' && typeof high === 'number' && low > high && { high: 'order' as const }),
  };
}

function limitOf(text: string): number | null {
  const value = readingValue(text);
  return typeof value === 'number' ? value : null;
}
