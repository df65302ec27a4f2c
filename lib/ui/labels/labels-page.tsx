'use client';

import { useTranslations } from 'use-intl';
import type { LabelForm } from '@/lib/domain/labels/label-form';
import type { DrawnLabel, LabelProblem } from '@/lib/domain/labels/label-picture';
import type { LabelStock } from '@/lib/domain/labels/label-stock';
import { LabelOptions } from '@/lib/ui/labels/label-options';
import { LabelSheets } from '@/lib/ui/labels/label-sheets';
import { PrintButtons } from '@/lib/ui/labels/print-buttons';
import { Section } from '@/lib/ui/section';
import { Screen } from '@/lib/ui/shell/screen';
import classes from '@/lib/ui/shop/shop.module.css';

/** What the labels page shows. */
export type LabelsPageProps = {
  form: LabelForm;
  stock: LabelStock;
  /** The numbers of the stock that were given leave no label; the preset's are shown. */
  isStockRefused: boolean;
  badCode: string | null;
  codes: string[];
  mayBadges: boolean;
  labels: DrawnLabel[];
  problems: LabelProblem[];
  printedBefore: string[];
};

/** Labels: what to print and on what, how it will look, and the buttons that print it. */
export function LabelsPage(props: LabelsPageProps) {
  const t = useTranslations('labels');
  const { form, stock, labels, problems, codes, badCode, isStockRefused } = props;
  const isDense = labels.some(({ arranged }) => arranged.isTooDense);
  return (
    <Screen title={<span className="rk-no-print">{t('title')}</span>}>
      <div className={classes.shop}>
        <div className="rk-no-print">
          <div className={classes.columns}>
            <LabelOptions {...props} />
            <div className={classes.stack}>
              {badCode !== null && (
                <Remark meaning="stop" text={t('badCode', { code: badCode.slice(0, 80) })} />
              )}
              {isStockRefused && <Remark meaning="stop" text={t('stockRefused')} />}
              {problems.slice(0, 5).map((problem) => (
                <Remark key={problem.code} meaning="stop" text={wordsOf(problem, t)} />
              ))}
              {isDense && <Remark meaning="caution" text={t('dense')} />}
              {codes.length > 0 && problems.length === 0 && <PrintButtons {...props} />}
              {codes.length === 0 && <p className={classes.quiet}>{t('none')}</p>}
            </div>
          </div>
        </div>
        {problems.length === 0 && labels.length > 0 && (
          <Section title={<span className="rk-no-print">{t('preview')}</span>}>
            <LabelSheets stock={stock} labels={labels} copies={form.copies} skip={form.skip} />
          </Section>
        )}
      </div>
    </Screen>
  );
}

function Remark({ meaning, text }: { meaning: 'stop' | 'caution'; text: string }) {
  return (
    <p className={classes.strip} data-meaning={meaning} role="alert">
      {text}
    </p>
  );
}

function wordsOf(problem: LabelProblem, t: ReturnType<typeof useTranslations<'labels'>>): string {
  const { code } = problem;
  if (problem.fault === 'letters_missing')
    return t('problem.letters_missing', { code, letters: problem.letters.join(' ') });
  return t(`problem.${problem.fault}`, { code });
}
