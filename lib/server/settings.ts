import { type Env, readEnv } from '@/lib/server/env';

let remembered: Env | null = null;

/** This process's settings as they were at first use; throws with every bad variable named. */
export function settings(): Env {
  remembered ??= checked();
  return remembered;
}

function checked(): Env {
  const result = readEnv(process.env);
  if (!result.ok) throw new Error(['Bad settings:', ...result.problems].join('\n  '));
  return result.env;
}
