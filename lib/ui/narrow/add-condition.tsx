'use client';

import { Button, NativeSelect, TextInput } from '@mantine/core';
import { IconPlus } from '@tabler/icons-react';
import { useRouter } from 'next/navigation';
import { type FormEvent, useState } from 'react';
import { useTimeZone, useTranslations } from 'use-intl';
import { PLACE_KINDS } from '@/lib/domain/genealogy/answer';
import {
  CONDITIONS_MAX,
  type Condition,
  type ConditionKind,
  conditionSchema,
} from '@/lib/domain/genealogy/narrow-question';
import { type InputError, inputErrors } from '@/lib/domain/input-errors';
import classes from '@/lib/ui/narrow/narrow.module.css';
import { narrowAddress } from '@/lib/ui/narrow/narrow-address';
import { instantOnPlantClock } from '@/lib/ui/plant-clock';
import { QuestionFaults } from '@/lib/ui/trace/question-faults';

const FIELDS = {
  used: ['item', 'lot', 'part', 'station', 'operator', 'from', 'to'],
  processed: ['result', 'station', 'operation', 'operator', 'from', 'to'],
  defect: ['code', 'position', 'station', 'operation', 'from', 'to'],
  repaired: ['position', 'change', 'from', 'to'],
  product: ['product', 'revision'],
  started: ['boardLot', 'order', 'panel'],
  place: ['place', 'station'],
  packed: ['container', 'shipment', 'customer'],
} as const satisfies Record<ConditionKind, readonly string[]>;

const KINDS = [
  'used',
  'processed',
  'defect',
  'repaired',
  'product',
  'started',
  'place',
  'packed',
] as const satisfies readonly ConditionKind[];

type FieldName = (typeof FIELDS)[ConditionKind][number];

/** What the plant offers to choose from. */
export type NarrowChoices = {
  stations: string[];
  operations: string[];
  operators: { badge: string; name: string }[];
};

/** One more condition: its facts are all about the same event. */
export function AddCondition({
  conditions,
  choices,
}: {
  conditions: readonly Condition[];
  choices: NarrowChoices;
}) {
  const t = useTranslations('narrow.add');
  const tDemand = useTranslations('narrow.demand');
  const router = useRouter();
  const timeZone = useTimeZone() ?? 'UTC';
  const [kind, setKind] = useState<ConditionKind>('used');
  const [faults, setFaults] = useState<InputError[]>([]);
  if (conditions.length >= CONDITIONS_MAX) return <p>{t('full', { max: CONDITIONS_MAX })}</p>;

  const submit = (event: FormEvent<HTMLFormElement>): void => {
    event.preventDefault();
    const form = new FormData(event.currentTarget);
    const textOf = (name: string) => String(form.get(name) ?? '').trim();
    const given = FIELDS[kind].flatMap((name) => {
      const text = textOf(name);
      if (text === '') return [];
      return [[name, name === 'from' || name === 'to' ? instantOnPlantClock(text, timeZone) : text]];
    });
    const must = conditions.length === 0 || textOf('demand') === 'must';
    const parsed = conditionSchema.safeParse({ must, kind, ...Object.fromEntries(given) });
    if (!parsed.success) {
      setFaults(inputErrors(parsed.error));
      return;
    }
    setFaults([]);
    event.currentTarget.reset();
    router.push(narrowAddress([...conditions, parsed.data]), { scroll: false });
  };

  return (
    <form className={classes.form} onSubmit={submit} aria-label={t('title')}>
      {faults.length > 0 && (
        <div data-wide>
          <QuestionFaults faults={faults} />
        </div>
      )}
      {conditions.length > 0 && (
        <NativeSelect
          name="demand"
          label={t('demand')}
          data={[
            { value: 'must', label: tDemand('must') },
            { value: 'mustNot', label: tDemand('mustNot') },
          ]}
        />
      )}
      <NativeSelect
        name="kind"
        label={t('kind')}
        value={kind}
        onChange={(event) => {
          setFaults([]);
          setKind(KINDS.find((each) => each === event.currentTarget.value) ?? 'used');
        }}
        data={KINDS.map((each) => ({ value: each, label: t(`kinds.${each}`) }))}
      />
      {FIELDS[kind].map((name) => (
        <Field key={`${kind} ${name}`} name={name} choices={choices} />
      ))}
      <Button type="submit" variant="outline" leftSection={<IconPlus aria-hidden />}>
        {t('submit')}
      </Button>
      <p className={classes.quiet} data-wide>
        {t('zone', { zone: timeZone })}
      </p>
    </form>
  );
}

function Field({ name, choices }: { name: FieldName; choices: NarrowChoices }) {
  const t = useTranslations('narrow.add');
  const tPlace = useTranslations('tags.place');
  const tResult = useTranslations('tags.result');
  const label = t(`fields.${name}`);
  const any = { value: '', label: t('any') };
  const same = (codes: readonly string[]) => codes.map((code) => ({ value: code, label: code }));
  switch (name) {
    case 'station':
      return <NativeSelect name={name} label={label} data={[any, ...same(choices.stations)]} />;
    case 'operation':
      return <NativeSelect name={name} label={label} data={[any, ...same(choices.operations)]} />;
    case 'operator': {
      const people = choices.operators.map(({ badge, name: said }) => ({
        value: badge,
        label: `${badge} ${said}`.trim(),
      }));
      return <NativeSelect name={name} label={label} data={[any, ...people]} />;
    }
    case 'result':
      return (
        <NativeSelect
          name={name}
          label={label}
          data={[any, ...(['pass', 'fail'] as const).map((value) => ({ value, label: tResult(value) }))]}
        />
      );
    case 'change':
      return (
        <NativeSelect
          name={name}
          label={label}
          data={[
            any,
            ...(['removed', 'installed'] as const).map((value) => ({ value, label: t(`change.${value}`) })),
          ]}
        />
      );
    case 'place':
      return (
        <NativeSelect
          name={name}
          label={label}
          data={PLACE_KINDS.map((value) => ({ value, label: tPlace(value) }))}
        />
      );
    case 'from':
    case 'to':
      return <TextInput name={name} label={label} type="datetime-local" />;
    default:
      return <TextInput name={name} label={label} autoComplete="off" maxLength={64} />;
  }
}
