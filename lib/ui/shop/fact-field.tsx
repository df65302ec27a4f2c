'use client';

import { Textarea, TextInput } from '@mantine/core';
import { useLayoutEffect, useRef } from 'react';
import { useTranslations } from 'use-intl';
import { record } from '@/lib/ui/messages/en/record';

/** A field of a form that records a fact, with what is wrong with it; `fault` is the code of the event's schema. */
export function FactField({
  label,
  value,
  fault,
  isLong = false,
  inputMode = 'text',
  isFirst = false,
  onChange,
  onLeave,
}: {
  label: string;
  value: string;
  fault?: string | undefined;
  isLong?: boolean;
  inputMode?: 'text' | 'decimal';
  /** Whether the keyboard goes here as soon as the form stands there; a scan replaces what is filled in. */
  isFirst?: boolean;
  onChange: (value: string) => void;
  /** When the keyboard has left it, what it says. */
  onLeave?: (value: string) => void;
}) {
  const t = useTranslations('record.fault');
  const input = useRef<HTMLInputElement>(null);
  useLayoutEffect(() => {
    if (isFirst) input.current?.select();
  }, [isFirst]);
  const error = fault === undefined ? null : t(isKnown(fault) ? fault : 'other');
  const shared = {
    size: 'xl',
    label,
    value,
    error,
    autoComplete: 'off',
    autoCapitalize: 'none',
    spellCheck: false,
    autoFocus: isFirst,
    onChange: (event: { currentTarget: { value: string } }) => onChange(event.currentTarget.value),
  } as const;
  return isLong ? (
    <Textarea {...shared} autosize minRows={1} spellCheck />
  ) : (
    <TextInput
      {...shared}
      ref={input}
      inputMode={inputMode}
      data-takes-scan
      onBlur={(event) => onLeave?.(event.currentTarget.value)}
    />
  );
}

function isKnown(fault: string): fault is keyof typeof record.fault {
  return fault in record.fault;
}
