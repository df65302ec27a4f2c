'use client';

import { useEffect, useRef } from 'react';
import classes from '@/lib/ui/shop/shop.module.css';
import type { FormState } from '@/lib/ui/shop/use-fact-form';
import { VerdictPanel } from '@/lib/ui/verdict/verdict-panel';

/** Every reason why a form was not recorded, brought into sight; nothing otherwise. */
export function FormOutcome({ state, stopped }: { state: FormState; stopped: string }) {
  const panel = useRef<HTMLDivElement>(null);
  const reasons = state.kind === 'refused' ? state.reasons : null;
  useEffect(() => {
    if (reasons !== null) panel.current?.scrollIntoView({ block: 'nearest' });
  }, [reasons]);
  if (reasons === null) return null;
  return (
    <div ref={panel} className={classes.outcome}>
      <VerdictPanel kind="stop" text={stopped} reasons={reasons} />
    </div>
  );
}
