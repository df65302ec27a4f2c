import { Fragment } from 'react';
import { useTranslations } from 'use-intl';
import type { UnitRecord } from '@/lib/domain/units/unit-record';
import { CodeText } from '@/lib/ui/code-text';
import { Facts } from '@/lib/ui/facts';
import { PlaceText } from '@/lib/ui/place-text';
import { PlaceTag } from '@/lib/ui/tags/place-tag';

/** A unit in a line: what it is, where it is, and what comes next. */
export function UnitFacts({ record }: { record: UnitRecord }) {
  const t = useTranslations('unit.facts');
  const { product, revision, place, containers, standing } = record;
  const { next, isSigned, isScrapped, steps } = standing;
  const nextText =
    next === null ? steps.length > 0 && t('finished') : t('nextStep', { ...next, step: String(next.step) });
  return (
    <Facts
      facts={[
        [t('product'), product !== null && `${product} ${revision ?? ''}`],
        [
          t('place'),
          <>
            <PlaceTag place={place} /> <PlaceText place={place} />
          </>,
        ],
        [t('next'), !isScrapped && nextText],
        [t('signed'), t(isSigned ? 'isSigned' : 'isNotSigned')],
        [
          t('containers'),
          containers.length > 0 &&
            containers.map((container, depth) => (
              <Fragment key={container}>
                {depth > 0 && ' › '}
                <CodeText code={container} kind="container" />
              </Fragment>
            )),
        ],
      ]}
    />
  );
}
