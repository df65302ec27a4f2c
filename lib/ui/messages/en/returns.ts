/** Words of the returns screen. */
export const returns = { title: 'returns' } as const;
