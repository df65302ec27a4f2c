import {
  type Icon,
  IconAlertOctagonFilled,
  IconArrowBigRightFilled,
  IconCircleCheckFilled,
  IconCircleDashed,
} from '@tabler/icons-react';
import { useTranslations } from 'use-intl';
import type { StepStanding, UnitStanding } from '@/lib/domain/units/unit-standing';
import classes from '@/lib/ui/unit/unit.module.css';

type StepState = 'pass' | 'fail' | 'next' | 'owed';

const SHAPES: Record<StepState, Icon> = {
  pass: IconCircleCheckFilled,
  fail: IconAlertOctagonFilled,
  next: IconArrowBigRightFilled,
  owed: IconCircleDashed,
};

/** The steps that a unit owes, in order, each with how it stands there. */
export function RouteStrip({ standing }: { standing: UnitStanding }) {
  const t = useTranslations('unit.route');
  const tResult = useTranslations('tags.result');
  if (standing.steps.length === 0) return <p>{t('none')}</p>;
  return (
    <ol className={classes.route}>
      {standing.steps.map((step) => {
        const state = stateOf(step, standing.next?.step ?? null);
        const Shape = SHAPES[state];
        return (
          <li key={step.step} data-state={state}>
            <small>
              {t('step', { step: String(step.step) })}
              {step.isSample && `, ${t('sample')}`}
            </small>
            <strong>{step.operation}</strong>
            <span>
              <Shape aria-hidden />
              {state === 'pass' || state === 'fail' ? tResult(state) : t(state)}
            </span>
            {state === 'fail' && <small>{t('tries', { tries: step.tries, attempts: step.attempts })}</small>}
          </li>
        );
      })}
    </ol>
  );
}

function stateOf({ step, last }: StepStanding, next: number | null): StepState {
  return last ?? (step === next ? 'next' : 'owed');
}
