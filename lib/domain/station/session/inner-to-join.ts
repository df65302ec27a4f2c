import { innerPositions } from '@/lib/domain/station/product-picture';
import type { About, Work } from '@/lib/domain/station/session/session';
import type { StationPicture } from '@/lib/domain/station/station-picture';

/** What is known of the unit in work, with what was put into it since its go. */
export function aboutNow({ about, joined }: Pick<Work, 'about' | 'joined'>): About {
  const { unit } = about;
  if (unit === null || joined.length === 0) return about;
  const cautions = unit.cautions.filter(
    (caution) =>
      caution.what !== 'missing_inner' || !joined.some(({ position }) => position === caution.position),
  );
  return { ...about, unit: { ...unit, joined: [...unit.joined, ...joined], cautions } };
}

/** Sub-assemblies that are usually put in at this station and are not in the unit in work. */
export function innerToJoin(
  work: Work,
  { joins }: Pick<StationPicture, 'joins'>,
): { inner: string; position: string }[] {
  const { product } = work.about;
  if (product === null) return [];
  const taken = [...(work.about.unit?.joined ?? []), ...work.joined].map(({ position }) => position);
  return innerPositions(product).filter(
    ({ inner, position }) => joins.some((row) => row.product === inner) && !taken.includes(position),
  );
}
