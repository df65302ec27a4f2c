'use client';

import { Textarea, TextInput } from '@mantine/core';
import { useLayoutEffect, useRef } from 'react';
import { useFaultWords } from '@/lib/ui/verdict/use-fault-words';

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
  const wordsOf = useFaultWords();
  const input = useRef<HTMLInputElement>(null);
  useLayoutEffect(() => {
    if (isFirst) input.current?.select();
  }, [isFirst]);
  const error = fault === undefined ? null : wordsOf(fault);
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
