'use client';

import { Anchor } from '@mantine/core';
import Link from 'next/link';
import { Screen } from '@/lib/ui/shell/screen';

/** What stands where the page of a code would, when nothing names it: the way to trace it as something else. */
export function UnknownCode(words: { title: string; text: string; trace: string; code: string }) {
  const { title, text, trace, code } = words;
  return (
    <Screen title={title}>
      <p>{text}</p>
      <p>
        <Anchor component={Link} href={`/trace?code=${encodeURIComponent(code)}`}>
          {trace}
        </Anchor>
      </p>
    </Screen>
  );
}
