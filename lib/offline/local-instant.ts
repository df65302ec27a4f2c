/** A moment as RFC 3339 with milliseconds and the device's own offset, as in 2026-03-02T08:15:30.120+01:00. */
export function localInstant(moment: Date): string {
  const offsetMinutes = -moment.getTimezoneOffset();
  const shifted = new Date(moment.getTime() + offsetMinutes * 60_000).toISOString().slice(0, -1);
  const sign = offsetMinutes < 0 ? '-' : '+';
  const size = Math.abs(offsetMinutes);
  return `${shifted}${sign}${twoDigits(Math.floor(size / 60))}:${twoDigits(size % 60)}`;
}

function twoDigits(value: number): string {
  return String(value).padStart(2, '0');
}
