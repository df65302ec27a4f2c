import { Button, Group } from '@mantine/core';
import {
  IconFold,
  IconMaximize,
  IconPrinter,
  IconZoomIn,
  IconZoomOut,
  IconZoomScan,
} from '@tabler/icons-react';
import { memo } from 'react';
import { useTranslations } from 'use-intl';

/** What can be done with the whole picture. */
export const GraphTools = memo(function GraphTools(actions: {
  onZoom: (factor: number) => void;
  onFit: () => void;
  onFold: () => void;
  onUnfold: () => void;
}) {
  const t = useTranslations('genealogy.tools');
  const tools = [
    ['in', IconZoomIn, () => actions.onZoom(1.4)],
    ['out', IconZoomOut, () => actions.onZoom(1 / 1.4)],
    ['fit', IconZoomScan, actions.onFit],
    ['unfold', IconMaximize, actions.onUnfold],
    ['fold', IconFold, actions.onFold],
    ['print', IconPrinter, () => window.print()],
  ] as const;
  return (
    <Group className="rk-no-print" gap="xs" role="group" aria-label={t('label')}>
      {tools.map(([name, Shape, act]) => (
        <Button key={name} variant="default" leftSection={<Shape aria-hidden size={20} />} onClick={act}>
          {t(name)}
        </Button>
      ))}
    </Group>
  );
});
