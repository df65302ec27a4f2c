import { IconAlertOctagonFilled, IconAlertTriangleFilled, IconCircleCheckFilled } from '@tabler/icons-react';
import { useTranslations } from 'use-intl';
import type { FileFault, PlantPreview } from '@/lib/domain/plant/plant-preview';
import { plant } from '@/lib/ui/messages/en/plant';
import { ChangeList } from '@/lib/ui/plant/change-list';
import classes from '@/lib/ui/plant/plant.module.css';
import type { EditorState } from '@/lib/ui/plant/use-plant-editor';

/** What a check or a save brought: faults by line, what would change, what was probably not meant. */
export function EditorAnswer({ state, onGoTo }: { state: EditorState; onGoTo: (fault: FileFault) => void }) {
  const t = useTranslations('plant.editor');
  return (
    <div className={classes.answer} role="status">
      {state.kind === 'unchecked' && <p className={classes.quiet}>{t('unchecked')}</p>}
      {state.kind === 'saved' && (
        <p data-meaning="go">
          <IconCircleCheckFilled aria-hidden />
          {t('saved')}
        </p>
      )}
      {state.kind === 'failed' && (
        <p data-meaning="stop">
          <IconAlertOctagonFilled aria-hidden />
          {t('notSaved')}
        </p>
      )}
      {state.kind === 'checked' &&
        (state.preview.faults.length > 0 ? (
          <FaultList faults={state.preview.faults} onGoTo={onGoTo} />
        ) : (
          <Consequences preview={state.preview} />
        ))}
    </div>
  );
}

function FaultList({
  faults,
  onGoTo,
}: {
  faults: PlantPreview['faults'];
  onGoTo: (fault: FileFault) => void;
}) {
  const t = useTranslations('plant.editor');
  const textOf = ({ code, detail }: FileFault) =>
    code === 'not_json'
      ? t(`syntax.${isSyntaxKey(detail) ? detail : 'other'}`)
      : t(`fault.${isFaultKey(code) ? code : 'other'}`, { detail });
  return (
    <>
      <p data-meaning="stop">
        <IconAlertOctagonFilled aria-hidden />
        {t('faults', { count: faults.length })}
      </p>
      <ul className={classes.faults}>
        {faults.map((fault) => (
          <li key={JSON.stringify(fault)}>
            <button
              type="button"
              aria-label={t('goTo', { line: String(fault.line), detail: textOf(fault) })}
              onClick={() => onGoTo(fault)}
            >
              {t('line', { line: String(fault.line) })}
            </button>
            <span>
              <code>{fault.pointer}</code> {textOf(fault)}
            </span>
          </li>
        ))}
      </ul>
    </>
  );
}

function Consequences({ preview: { changes, warnings } }: { preview: PlantPreview }) {
  const t = useTranslations('plant.editor');
  const tWarning = useTranslations('plant.warning');
  return (
    <>
      <p data-meaning="go">
        <IconCircleCheckFilled aria-hidden />
        {t('changes', { count: changes.length })}
      </p>
      <ChangeList changes={changes} />
      {warnings.length > 0 && (
        <>
          <p data-meaning="caution">
            <IconAlertTriangleFilled aria-hidden />
            {t('warnings', { count: warnings.length })}
          </p>
          <ul>
            {warnings.map(({ code, pointer, name }) => (
              <li key={pointer + code}>{tWarning(code, { name })}</li>
            ))}
          </ul>
        </>
      )}
    </>
  );
}

function isSyntaxKey(detail: string): detail is keyof typeof plant.editor.syntax {
  return Object.hasOwn(plant.editor.syntax, detail);
}

function isFaultKey(code: string): code is keyof typeof plant.editor.fault {
  return Object.hasOwn(plant.editor.fault, code);
}
