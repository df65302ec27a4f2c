'use client';

import type { FormState } from '@/lib/ui/shop/use-fact-form';
import { VerdictPanel } from '@/lib/ui/verdict/verdict-panel';

/** Every reason why a form was not recorded; nothing otherwise. */
export function FormOutcome({ state, stopped }: { state: FormState; stopped: string }) {
  if (state.kind !== 'refused') return null;
  return <VerdictPanel kind="stop" text={stopped} reasons={state.reasons} />;
}
