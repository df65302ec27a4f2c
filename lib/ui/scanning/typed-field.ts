type Field = HTMLInputElement | HTMLTextAreaElement | HTMLSelectElement;

/** A field with what stood in it before a scanner typed into it. */
export type FieldBefore = { field: Field; value: string; takesScan: boolean };

/** The field that has the keyboard, as it stands, or null. */
export function fieldNow(): FieldBefore | null {
  const field = document.activeElement;
  const isField =
    field instanceof HTMLInputElement ||
    field instanceof HTMLTextAreaElement ||
    field instanceof HTMLSelectElement;
  return isField ? { field, value: field.value, takesScan: 'takesScan' in field.dataset } : null;
}

/** Sets a field as a person would: whoever follows its changes sees this one. */
export function setField(field: Field, value: string): void {
  if (field.value === value) return;
  // React replaces the property on the element itself and would not see the change.
  Object.getOwnPropertyDescriptor(Object.getPrototypeOf(field), 'value')?.set?.call(field, value);
  field.dispatchEvent(new Event(field instanceof HTMLSelectElement ? 'change' : 'input', { bubbles: true }));
}
