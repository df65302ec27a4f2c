/** Words of the items screen. */
export const items = { title: 'items' } as const;
