'use client';

import type { Icon } from '@tabler/icons-react';
import type { FormEvent, KeyboardEvent, ReactNode } from 'react';
import { useTranslations } from 'use-intl';
import { BigButton } from '@/lib/ui/shop/big-button';
import classes from '@/lib/ui/shop/shop.module.css';
import type { FormState } from '@/lib/ui/shop/use-fact-form';

/**
 * The frame of a form that records a fact. A scanner's Enter in a field leads to the next one, whose text the next scan
 * replaces, and from the last one to the button.
 */
export function FactFormShell({
  title,
  state,
  submitLabel,
  shape,
  isPlain = false,
  onSubmit,
  children,
}: {
  title: string;
  state: FormState;
  submitLabel: string;
  shape: Icon;
  /** Without frame and heading, inside something that has its own. */
  isPlain?: boolean;
  onSubmit: () => Promise<void>;
  children: ReactNode;
}) {
  const t = useTranslations('record');
  const isSending = state.kind === 'sending';
  return (
    <form
      className={isPlain ? classes.stack : classes.card}
      data-meaning={isPlain ? undefined : 'act'}
      aria-label={title}
      noValidate
      onKeyDown={leadOn}
      onSubmit={(event: FormEvent) => {
        event.preventDefault();
        void onSubmit();
      }}
    >
      {!isPlain && <h2>{title}</h2>}
      {children}
      <BigButton type="submit" look="act" size="huge" shape={shape} isDisabled={isSending}>
        {isSending ? t('sendingOne') : submitLabel}
      </BigButton>
    </form>
  );
}

function leadOn(event: KeyboardEvent<HTMLFormElement>): void {
  if (event.key !== 'Enter' || !(event.target instanceof HTMLInputElement)) return;
  event.preventDefault();
  const stops = [
    ...event.currentTarget.querySelectorAll<HTMLElement>('input, textarea, button[type=submit]'),
  ];
  const next = stops[stops.indexOf(event.target) + 1];
  next?.focus();
  if (next instanceof HTMLInputElement) next.select();
}
