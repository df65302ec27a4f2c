'use client';

import { Anchor } from '@mantine/core';
import Link from 'next/link';
import { RecordScreen } from '@/lib/ui/trace/record-screen';

/** What stands where the page of a code would, when nothing names it: the way to trace it as something else. */
export function UnknownCode(words: { title: string; text: string; trace: string; code: string }) {
  const { title, text, trace, code } = words;
  return (
    <RecordScreen title={title}>
      <p>{text}</p>
      <p>
        <Anchor component={Link} href={`/trace?code=${encodeURIComponent(code)}`}>
          {trace}
        </Anchor>
      </p>
    </RecordScreen>
  );
}
