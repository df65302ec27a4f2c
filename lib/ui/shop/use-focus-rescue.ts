import { useEffect } from 'react';

const LOOK_EVERY_MS = 250;

/**
 * Gives the keyboard back to the scan box when what had it went away: a browser tells nobody when the element with the
 * focus is removed. It looks after every change of `step`, and now and then.
 */
export function useFocusRescue(step: string): void {
  // biome-ignore lint/correctness/useExhaustiveDependencies: it looks after every change of the step
  useEffect(rescue, [step]);
  useEffect(() => {
    const timer = setInterval(rescue, LOOK_EVERY_MS);
    return () => clearInterval(timer);
  }, []);
}

function rescue(): void {
  const { activeElement } = document;
  if (activeElement !== null && activeElement !== document.body) return;
  if (document.querySelector('[role=dialog]') !== null) return;
  document.querySelector<HTMLInputElement>('input[name="code"]')?.focus({ preventScroll: true });
}
