'use client';

import { useState } from 'react';
import { useTranslations } from 'use-intl';
import { BigButton } from '@/lib/ui/shop/big-button';
import { ChoiceGrid } from '@/lib/ui/shop/choice-grid';
import classes from '@/lib/ui/shop/shop.module.css';

// More than fit on a tablet at once: then the letters are asked for first.
const TOGETHER_MAX = 30;

/** Reference designators to press; many of them by their letter first. */
export function PositionChoice({
  positions,
  onChoose,
}: {
  positions: readonly string[];
  onChoose: (position: string) => void;
}) {
  const t = useTranslations('station.position');
  const [letter, setLetter] = useState<string | null>(null);
  if (positions.length <= TOGETHER_MAX)
    return <ChoiceGrid isDense label={t('letters')} codes={positions} onChoose={onChoose} />;
  const groups = byLetter(positions);
  if (letter === null)
    return (
      <fieldset className={classes.plainFieldset} aria-label={t('letters')}>
        <div className={classes.grid} data-dense>
          {[...groups.keys()].map((key) => (
            <BigButton key={key} onPress={() => setLetter(key)}>
              {t('group', { letter: key })}
            </BigButton>
          ))}
        </div>
      </fieldset>
    );
  return (
    <div className={classes.stack}>
      <ChoiceGrid isDense label={t('letters')} codes={groups.get(letter) ?? []} onChoose={onChoose} />
      <div className={classes.row}>
        <BigButton onPress={() => setLetter(null)}>{t('allGroups')}</BigButton>
      </div>
    </div>
  );
}

function byLetter(positions: readonly string[]): Map<string, string[]> {
  const groups = new Map<string, string[]>();
  for (const position of positions) {
    const letter = /^\p{L}+/u.exec(position)?.[0] ?? position.slice(0, 1);
    groups.set(letter, [...(groups.get(letter) ?? []), position]);
  }
  return groups;
}
