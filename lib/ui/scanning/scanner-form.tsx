'use client';

import { TextInput } from '@mantine/core';
import { IconDeviceFloppy } from '@tabler/icons-react';
import { useState } from 'react';
import { useTranslations } from 'use-intl';
import {
  readScannerSettings,
  type ScannerSettings,
  scannerSettingsSchema,
} from '@/lib/domain/scanning/scanner-settings';
import { BigButton } from '@/lib/ui/shop/big-button';
import classes from '@/lib/ui/shop/shop.module.css';

const SUFFIXES = ['Enter', 'Tab', 'pause'] as const;

/** How the scanner types: prefix, end and speed; `kept` is what the device had stored. */
export function ScannerForm({
  kept,
  onSave,
}: {
  kept: string | null;
  onSave: (settings: ScannerSettings) => void;
}) {
  const t = useTranslations('scanning.settings');
  const [settings, setSettings] = useState(() => readScannerSettings(kept));
  const [gap, setGap] = useState(String(settings.gapMs));
  const [isSaved, setSaved] = useState(kept !== null);
  const read = scannerSettingsSchema.safeParse({ ...settings, gapMs: Number(gap) });
  const change = (part: Partial<ScannerSettings>): void => {
    setSaved(false);
    setSettings({ ...settings, ...part });
  };
  return (
    <form
      className={classes.card}
      onSubmit={(event) => {
        event.preventDefault();
        if (read.success) onSave(read.data);
      }}
    >
      <fieldset className={classes.plainFieldset}>
        <legend className={classes.line}>{t('suffix')}</legend>
        <div className={classes.row}>
          {SUFFIXES.map((suffix) => (
            <BigButton key={suffix} isPressed={settings.suffix === suffix} onPress={() => change({ suffix })}>
              {t(`suffixes.${suffix}`)}
            </BigButton>
          ))}
        </div>
      </fieldset>
      <TextInput
        size="xl"
        label={t('prefix')}
        value={settings.prefix}
        maxLength={8}
        autoComplete="off"
        autoCapitalize="none"
        spellCheck={false}
        onChange={(event) => change({ prefix: event.currentTarget.value })}
      />
      <TextInput
        size="xl"
        label={t('gap')}
        description={t('gapHint')}
        value={gap}
        inputMode="numeric"
        autoComplete="off"
        error={read.success ? null : t('bad')}
        onChange={(event) => {
          setSaved(false);
          setGap(event.currentTarget.value);
        }}
      />
      <div className={classes.row}>
        <BigButton look="act" type="submit" shape={IconDeviceFloppy} isDisabled={!read.success}>
          {t('save')}
        </BigButton>
        <span role="status">{isSaved && t('saved')}</span>
      </div>
    </form>
  );
}
