'use client';

import { useTranslations } from 'use-intl';
import { PLACE_KINDS, type PlaceKind, RELATIONS, type Relation } from '@/lib/domain/genealogy/answer';
import type { TraceAnswer } from '@/lib/domain/genealogy/trace-answer';
import { PlaceTag } from '@/lib/ui/tags/place-tag';
import { RelationTag } from '@/lib/ui/tags/relation-tag';
import { BarLink } from '@/lib/ui/trace/bar-link';
import classes from '@/lib/ui/trace/trace.module.css';
import { type TraceQuestion, traceAddress } from '@/lib/ui/trace/trace-address';

/** Certain and possible units by place and by relation, as bars with their numbers; a press shows only those units, another one all again. */
export function Narrowing({ question, answer }: { question: TraceQuestion; answer: TraceAnswer }) {
  const t = useTranslations('trace.narrow');
  const tPlace = useTranslations('tags.place');
  const tRelation = useTranslations('tags.relation');
  const { shown } = answer;
  const total = answer.counts.certain.units + answer.counts.possible.units;
  const base: TraceQuestion = { ...question, certainty: [shown] };
  return (
    <div className={classes.narrowing}>
      <section>
        <h3>{t('place')}</h3>
        {PLACE_KINDS.map((kind) => (
          <BarLink
            key={kind}
            name={tPlace(kind)}
            tag={<PlaceTag place={kind} />}
            certain={answer.counts.certain.byPlace[kind]}
            possible={answer.counts.possible.byPlace[kind]}
            total={total}
            isPicked={question.place?.includes(kind) === true}
            href={traceAddress({ ...base, place: toggled<PlaceKind>(question.place, kind) })}
          />
        ))}
      </section>
      <section>
        <h3>{t('relation')}</h3>
        {RELATIONS.map((relation) => (
          <BarLink
            key={relation}
            name={tRelation(relation)}
            tag={<RelationTag relation={relation} />}
            certain={answer.counts.certain[relation]}
            possible={answer.counts.possible[relation]}
            total={total}
            isPicked={question.relation?.includes(relation) === true}
            href={traceAddress({ ...base, relation: toggled<Relation>(question.relation, relation) })}
          />
        ))}
      </section>
    </div>
  );
}

function toggled<T>(picked: readonly T[] | undefined, one: T): T[] {
  const others = (picked ?? []).filter((each) => each !== one);
  return others.length === (picked?.length ?? 0) ? [...others, one] : others;
}
