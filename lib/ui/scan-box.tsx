'use client';

import { ActionIcon, Button, TextInput } from '@mantine/core';
import { IconCamera, IconKeyboard } from '@tabler/icons-react';
import { type FormEvent, memo, type ReactNode, useId, useRef, useState } from 'react';
import { useTranslations } from 'use-intl';
import classes from '@/lib/ui/scan-box.module.css';
import { CameraPanel } from '@/lib/ui/scanning/camera-later';
import type { OnScan } from '@/lib/ui/scanning/scanned-code';
import { useScanIntake } from '@/lib/ui/scanning/use-scan-intake';
import { useWedge } from '@/lib/ui/scanning/use-wedge';
import shop from '@/lib/ui/shop/shop.module.css';
import { useKeptFocus } from '@/lib/ui/use-kept-focus';

type Size = 'md' | 'lg' | 'xl';

/**
 * Where scans come in: typed by a scanner whatever has the focus, seen by the camera, or typed into the box. Scans may
 * follow each other faster than they are answered; `onScan` gets each code with what else its label says. On a tablet
 * the screen's own keyboard stays away until it is asked for. Before the page has woken up, Enter asks for the same page with
 * `?code=…`, so that nothing typed is lost.
 */
export function ScanBox({
  label,
  description,
  size = 'xl',
  ...entry
}: {
  label: string;
  description?: ReactNode;
  onScan: OnScan;
  size?: Size;
  isKeyboardOffered?: boolean;
}) {
  const id = useId();
  return (
    <div className={classes.box}>
      <label className={classes.label} data-size={size} htmlFor={id}>
        {label}
      </label>
      {description !== undefined && (
        <div className={classes.description} id={`${id}-more`}>
          {description}
        </div>
      )}
      <ScanEntry
        {...entry}
        id={id}
        size={size}
        {...(description !== undefined && { describedBy: `${id}-more` })}
      />
    </div>
  );
}

/** The box itself. What it is called changes with every verdict, and it need not be made again for that. */
const ScanEntry = memo(function ScanEntry({
  id,
  describedBy,
  onScan,
  size,
  isKeyboardOffered = true,
}: {
  id: string;
  describedBy?: string;
  onScan: OnScan;
  size: Size;
  isKeyboardOffered?: boolean;
}) {
  const t = useTranslations();
  const input = useRef<HTMLInputElement>(null);
  const [isKeyboardShown, setKeyboardShown] = useState(!isKeyboardOffered);
  const [isCameraOpen, setCameraOpen] = useState(false);
  const { take, remark } = useScanIntake(onScan);
  useWedge(input, (payload, into) => take(payload, 'wedge', into));
  useKeptFocus(input);

  const submit = (event: FormEvent): void => {
    event.preventDefault();
    const code = input.current?.value.trim() ?? '';
    if (input.current !== null) input.current.value = '';
    input.current?.focus();
    if (code !== '') take(code, 'typed');
  };

  const switchKeyboard = (): void => {
    setKeyboardShown(!isKeyboardShown);
    // A tablet looks at the input's mode when the focus comes.
    input.current?.blur();
    requestAnimationFrame(() => input.current?.focus());
  };

  return (
    <>
      <form className={classes.form} onSubmit={submit}>
        <TextInput
          ref={input}
          className={classes.field}
          id={id}
          aria-describedby={describedBy}
          name="code"
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
            aria-label={t('scanBox.keyboard')}
            aria-pressed={isKeyboardShown}
            onClick={switchKeyboard}
          >
            <IconKeyboard aria-hidden />
          </ActionIcon>
        )}
        <ActionIcon
          variant="default"
          size={`input-${size}`}
          aria-label={t('scanning.camera.open')}
          title={t('scanning.camera.open')}
          aria-pressed={isCameraOpen}
          onClick={() => setCameraOpen(!isCameraOpen)}
        >
          <IconCamera aria-hidden />
        </ActionIcon>
        <Button type="submit" size={size}>
          {t('scanBox.submit')}
        </Button>
      </form>
      {remark !== null && (
        <p
          className={shop.strip}
          data-meaning={remark === 'separator_lost' ? 'caution' : 'stop'}
          role="alert"
        >
          {t(`scanning.remark.${remark}`)}
        </p>
      )}
      {isCameraOpen && (
        <CameraPanel onCode={(payload) => take(payload, 'camera')} onClose={() => setCameraOpen(false)} />
      )}
    </>
  );
});
