import type { FloorUnitsQuestion } from '@/lib/domain/floor/floor-units';

type Asked = { [name in keyof FloorUnitsQuestion]?: FloorUnitsQuestion[name] | undefined };

/** Address of the list behind a count of the floor, always with its parameters in the same order. */
export function floorUnitsAddress({ place, station, trouble, page }: Asked): string {
  const parameters = new URLSearchParams();
  if (place !== undefined) parameters.set('place', place);
  if (station !== undefined) parameters.set('station', station);
  if (trouble !== undefined) parameters.set('trouble', trouble);
  if (page !== undefined && page > 1) parameters.set('page', String(page));
  return `/floor/units?${parameters}`;
}
