import { Fragment } from 'react';
import { useTranslations } from 'use-intl';
import type { SignOff } from '@/lib/domain/units/sign-off';
import type { UnitRecord } from '@/lib/domain/units/unit-record';
import { CodeText } from '@/lib/ui/code-text';
import { Facts } from '@/lib/ui/facts';
import { Moment } from '@/lib/ui/moment';
import { PlaceText } from '@/lib/ui/place-text';
import { PlaceTag } from '@/lib/ui/tags/place-tag';

/** A unit in a line: what it is, where it is, and what comes next. */
export function UnitFacts({ record }: { record: UnitRecord }) {
  const t = useTranslations('unit.facts');
  const { product, revision, place, containers, standing, signOff } = record;
  const { next, isScrapped, steps } = standing;
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
        [
          t('signed'),
          !isScrapped && (signOff === null ? t('isNotSigned') : <SignOffText signOff={signOff} />),
        ],
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

/** Who signed when, what was owed at that time, and what was done since. */
function SignOffText({ signOff }: { signOff: SignOff }) {
  const t = useTranslations('unit.facts');
  const { at, by, before, since } = signOff;
  const steps = since.map(({ step, operation }) => t('nextStep', { operation, step: String(step) }));
  return (
    <>
      {by === null ? t('signedAt') : t('signedBy', { by })} <Moment at={at} />
      {before !== null && `, ${t('signedBefore', { ...before, step: String(before.step) })}`}
      {steps.length > 0 && `; ${t('doneSince', { steps: steps.join(', '), count: steps.length })}`}
    </>
  );
}
