/** Lengths of time, short, for people who stand four metres away. */
export const time = {
  seconds: '{seconds, number} s',
  minutes: '{minutes, number} min',
  hours: '{hours, number} h {minutes, number} min',
  days: '{days, number} d {hours, number} h',
} as const;
