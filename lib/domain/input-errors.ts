import { z } from 'zod';

/** One fault of an input: where (RFC 6901), what kind (snake_case), and in words. */
export type InputError = { pointer: string; code: string; detail: string };

const ERRORS_MAX = 100;

function pointerOf(path: readonly PropertyKey[], base: string): string {
  const steps = path.map(
    (step) => `/${String(step).slice(0, 200).replaceAll('~', '~0').replaceAll('/', '~1')}`,
  );
  return base + steps.join('');
}

/** The faults that a schema found, with pointers below `base`; at most 100 of them. */
export function inputErrors(error: z.ZodError, base = ''): InputError[] {
  const errors: InputError[] = [];
  for (const issue of error.issues) {
    if (issue.code === 'unrecognized_keys') {
      for (const key of issue.keys)
        errors.push({
          pointer: pointerOf([...issue.path, key], base),
          code: 'unknown_key',
          detail: 'This key is not part of the contract.',
        });
      continue;
    }
    const custom: unknown = issue.code === 'custom' ? issue.params?.code : undefined;
    errors.push({
      pointer: pointerOf(issue.path, base),
      code: typeof custom === 'string' ? custom : issue.code,
      detail: issue.message,
    });
  }
  return errors.slice(0, ERRORS_MAX);
}

/** The faults that whatever was thrown tells of; none when it was no schema's. */
export function thrownErrors(thrown: unknown): InputError[] {
  return thrown instanceof z.ZodError ? inputErrors(thrown) : [];
}
