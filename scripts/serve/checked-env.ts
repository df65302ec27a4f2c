import { type Env, readEnv } from '@/lib/server/env';
import { StartProblem } from './start-problem';

/** This process's settings; throws `StartProblem` with every bad variable named. */
export function checkedEnv(): Env {
  const result = readEnv(process.env);
  if (!result.ok) throw new StartProblem(['Bad settings:', ...result.problems].join('\n  '));
  return result.env;
}
