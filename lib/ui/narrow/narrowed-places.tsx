import { useTranslations } from 'use-intl';
import { PLACE_KINDS, type PlaceKind } from '@/lib/domain/genealogy/answer';
import type { NarrowAnswer } from '@/lib/domain/genealogy/narrow-answer';
import { CONDITIONS_MAX, type Condition } from '@/lib/domain/genealogy/narrow-question';
import { narrowAddress } from '@/lib/ui/narrow/narrow-address';
import { PlaceTag } from '@/lib/ui/tags/place-tag';
import { BarLink } from '@/lib/ui/trace/bar-link';
import trace from '@/lib/ui/trace/trace.module.css';

/** Where the units are, as bars; a press makes the place a condition, and another one takes it away. Absent without units. */
export function NarrowedPlaces({
  counts: { certain, possible },
  conditions,
}: {
  counts: NarrowAnswer['counts'];
  conditions: readonly Condition[];
}) {
  const t = useTranslations('trace.narrow');
  const tPlace = useTranslations('tags.place');
  const total = certain.units + possible.units;
  if (total === 0) return null;
  return (
    <section className={trace.places}>
      <h3>{t('place')}</h3>
      {PLACE_KINDS.map((kind) => (
        <BarLink
          key={kind}
          name={tPlace(kind)}
          tag={<PlaceTag place={kind} />}
          certain={certain.byPlace[kind]}
          possible={possible.byPlace[kind]}
          total={total}
          isPicked={conditions.some((each) => isAt(each, kind))}
          href={narrowAddress(toggled(conditions, kind))}
        />
      ))}
    </section>
  );
}

/** A unit is at one place: another one takes the turn of the one that was picked. What cannot be asked is left as it is. */
function toggled(conditions: readonly Condition[], kind: PlaceKind): readonly Condition[] {
  const others = conditions.filter((each) => !PLACE_KINDS.some((other) => isAt(each, other)));
  if (conditions.some((each) => isAt(each, kind)))
    return others.length === 0 || others.some(({ must }) => must) ? others : conditions;
  if (others.length >= CONDITIONS_MAX) return conditions;
  return [...others, { must: true, kind: 'place', place: kind }];
}

function isAt(condition: Condition, kind: PlaceKind): boolean {
  return (
    condition.kind === 'place' &&
    condition.must &&
    condition.place === kind &&
    condition.station === undefined
  );
}
