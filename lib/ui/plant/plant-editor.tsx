import { Button, FileButton, Group, Textarea } from '@mantine/core';
import { useRef, useState } from 'react';
import { useTranslations } from 'use-intl';
import type { FileFault } from '@/lib/domain/plant/plant-preview';
import { EditorAnswer } from '@/lib/ui/plant/editor-answer';
import classes from '@/lib/ui/plant/plant.module.css';
import { currentPlantText, usePlantEditor } from '@/lib/ui/plant/use-plant-editor';

const BYTES_MAX = 4 * 1024 * 1024;

/** A plant file as a text: chosen, pasted or started from the plant; checked line by line, then saved. */
export function PlantEditor({ isOpen }: { isOpen: boolean }) {
  const t = useTranslations('plant.editor');
  const [text, setText] = useState('');
  const [isTooLarge, setTooLarge] = useState(false);
  const area = useRef<HTMLTextAreaElement>(null);
  const { state, isBusy, forget, check, save } = usePlantEditor();
  const write = (next: string): void => {
    setText(next);
    setTooLarge(new Blob([next]).size > BYTES_MAX);
    forget();
  };
  const canSave =
    state.kind === 'checked' && state.preview.faults.length === 0 && state.preview.changes.length > 0;
  const goTo = ({ offset }: FileFault): void => {
    area.current?.focus();
    area.current?.setSelectionRange(offset, lineEnd(text, offset));
  };
  return (
    <details className={classes.editor} open={isOpen}>
      <summary>{t('title')}</summary>
      <p>{t('hint')}</p>
      <Group>
        <FileButton
          accept="application/json,.json"
          onChange={async (file) => file && write(await file.text())}
        >
          {(props) => (
            <Button variant="default" {...props}>
              {t('file')}
            </Button>
          )}
        </FileButton>
        <Button variant="default" onClick={async () => write(await currentPlantText())}>
          {t('current')}
        </Button>
      </Group>
      <Textarea
        ref={area}
        label={t('text')}
        classNames={{ input: classes.text ?? '' }}
        rows={16}
        spellCheck={false}
        value={text}
        error={isTooLarge ? t('tooLarge') : null}
        onChange={(event) => write(event.currentTarget.value)}
      />
      <Group>
        <Button
          variant={canSave ? 'default' : 'filled'}
          disabled={text.trim() === '' || isTooLarge}
          loading={isBusy}
          onClick={() => check(text)}
        >
          {t('check')}
        </Button>
        <Button disabled={!canSave} loading={isBusy} onClick={() => save(text)}>
          {t('save')}
        </Button>
      </Group>
      <EditorAnswer state={state} onGoTo={goTo} />
    </details>
  );
}

function lineEnd(text: string, offset: number): number {
  const end = text.indexOf('\n', offset);
  return end === -1 ? text.length : end;
}
