/** Words of the holds screen. */
export const holds = { title: 'holds' } as const;
