/** Words of the pack screen. */
export const pack = { title: 'pack' } as const;
