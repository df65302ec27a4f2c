'use client';

import { ActionIcon, Button, TextInput } from '@mantine/core';
import { IconKeyboard } from '@tabler/icons-react';
import { type FormEvent, type ReactNode, useRef, useState } from 'react';
import { useTranslations } from 'use-intl';
import classes from '@/lib/ui/scan-box.module.css';
import { useKeptFocus } from '@/lib/ui/use-kept-focus';

/**
 * The box that a scanner types into: fast characters, then Enter. It empties itself at once, so scans may follow each
 * other faster than they are answered; `onScan` gets each, without spaces around it. On a tablet the screen's own
 * keyboard stays away until it is asked for. Before the page has woken up, Enter asks for the same page with
 * `?code=…`, so that nothing typed is lost.
 */
export function ScanBox({
  label,
  description,
  onScan,
  size = 'xl',
  isKeyboardOffered = true,
}: {
  label: string;
  description?: ReactNode;
  onScan: (code: string) => void;
  size?: 'md' | 'lg' | 'xl';
  isKeyboardOffered?: boolean;
}) {
  const t = useTranslations('scanBox');
  const input = useRef<HTMLInputElement>(null);
  const [isKeyboardShown, setKeyboardShown] = useState(!isKeyboardOffered);
  useKeptFocus(input);

  const submit = (event: FormEvent): void => {
    event.preventDefault();
    const code = input.current?.value.trim() ?? '';
    if (input.current !== null) input.current.value = '';
    input.current?.focus();
    if (code !== '') onScan(code);
  };

  const switchKeyboard = (): void => {
    setKeyboardShown(!isKeyboardShown);
    // A tablet looks at the input's mode when the focus comes.
    input.current?.blur();
    requestAnimationFrame(() => input.current?.focus());
  };

  return (
    <form className={classes.form} onSubmit={submit}>
      <TextInput
        ref={input}
        className={classes.field}
        name="code"
        label={label}
        description={description}
        size={size}
        inputMode={isKeyboardShown ? 'text' : 'none'}
        enterKeyHint="go"
        autoFocus
        autoComplete="off"
        autoCapitalize="none"
        autoCorrect="off"
        spellCheck={false}
      />
      {isKeyboardOffered && (
        <ActionIcon
          className={classes.keyboard ?? ''}
          variant="default"
          size={`input-${size}`}
          aria-label={t('keyboard')}
          aria-pressed={isKeyboardShown}
          onClick={switchKeyboard}
        >
          <IconKeyboard aria-hidden />
        </ActionIcon>
      )}
      <Button type="submit" size={size}>
        {t('submit')}
      </Button>
    </form>
  );
}
