/** The named fields of a form that were filled in, as text; an empty field, a file or a field not named is left out. */
export function formFields(form: FormData, names: readonly string[]): Record<string, string> {
  const fields = names.map((name) => [name, form.get(name)] as const);
  return Object.fromEntries(
    fields.filter(
      (field): field is readonly [string, string] => typeof field[1] === 'string' && field[1] !== '',
    ),
  );
}
