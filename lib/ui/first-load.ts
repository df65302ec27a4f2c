/** A station's first load is small: what can wait comes this long after it, or when it is first needed. */
export const AFTER_FIRST_LOAD_MS = 3000;
