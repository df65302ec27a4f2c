'use client';

import { TextInput } from '@mantine/core';
import { IconLink } from '@tabler/icons-react';
import { useState } from 'react';
import { useTranslations } from 'use-intl';
import type { ChangeoverInput, Splice } from '@/lib/domain/station/changeover/changeover';
import { BigButton } from '@/lib/ui/shop/big-button';
import classes from '@/lib/ui/shop/shop.module.css';

const GREY_UNITS_MAX = 1000;

/** A reel in the hand may be spliced to the one in its slot; how far the old end reaches may be said. */
export function SpliceChoice({
  splice,
  dispatch,
}: {
  splice: Splice | null;
  dispatch: (input: ChangeoverInput) => void;
}) {
  const t = useTranslations('changeover.splice');
  const [text, setText] = useState('');
  const set = (typed: string): void => {
    setText(typed);
    dispatch({ kind: 'splicing', splice: { greyUnits: readGreyUnits(typed) ?? null } });
  };
  return (
    <>
      <div className={classes.row}>
        <BigButton
          shape={IconLink}
          isPressed={splice !== null}
          onPress={() => dispatch({ kind: 'splicing', splice: splice === null ? { greyUnits: null } : null })}
        >
          {t('choose')}
        </BigButton>
      </div>
      {splice !== null && (
        <TextInput
          size="xl"
          label={t('greyUnits')}
          description={t('greyHint')}
          inputMode="numeric"
          autoComplete="off"
          value={text}
          onChange={(event) => set(event.currentTarget.value)}
          error={readGreyUnits(text) === undefined ? t('bad') : null}
        />
      )}
    </>
  );
}

/** What was typed as a number of units; null when nothing was, undefined when it is no such number. */
function readGreyUnits(text: string): number | null | undefined {
  if (text.trim() === '') return null;
  const count = Number(text);
  return Number.isInteger(count) && count >= 0 && count <= GREY_UNITS_MAX ? count : undefined;
}
