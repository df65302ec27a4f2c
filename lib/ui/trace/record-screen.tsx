'use client';

import type { ReactNode } from 'react';
import { Screen } from '@/lib/ui/shell/screen';
import { TraceBox } from '@/lib/ui/trace/trace-box';

/** The screen of one thing in the record: whoever has read it scans the next one. */
export function RecordScreen({
  title,
  beside,
  children,
}: {
  title: ReactNode;
  beside?: ReactNode;
  children: ReactNode;
}) {
  return (
    <Screen title={title} beside={beside}>
      <div className="rk-no-print">
        <TraceBox isShort />
      </div>
      {children}
    </Screen>
  );
}
